using BrewFloor.Brewing;
using BrewFloor.Domain.Yeast;
using BrewFloor.Web.Log;
using UnitsNet;

namespace BrewFloor.Web.Yeast;

/// <summary>The fields by which an entry brings a culture into being, and how much of it there is.</summary>
public static class NewCultureFields
{
    /// <summary>What is asked of a new culture; a correction asks none of it again.</summary>
    public static IEnumerable<Field> Asked(FormFloor floor) => floor.Corrected is null ? Described(floor) : [];

    private static IEnumerable<Field> Described(FormFloor floor) =>
        [
            new TextField("strain") { IsRequired = true },
            new ChoiceField("kind", floor.Choices<CultureKind>()) { IsRequired = true },
            new DayField("use-by"),
            new FlagField("mixed") { Hint = "hint.mixed" },
        ];

    public static NewCulture Read(FormReader said, FormFloor floor) =>
        floor.Corrected switch
        {
            CultureReceived old => old.NewCulture,
            CultureTakenOver old => old.NewCulture,
            _ => Read(said),
        };

    private static NewCulture Read(FormReader said) =>
        new(said.Id("new.0"), said.RequiredText("strain"), said.Choice<CultureKind>("kind"))
        {
            UseBy = said.DayOrNone("use-by"),
            IsMixed = said.Flag("mixed"),
        };

    /// <summary>Millilitres of slurry or grams of a pack: one of the two, not both.</summary>
    public static YeastAmount Amount(FormReader said, string row = "")
    {
        var litres = said.LitresOrNone(row + "amount", "amount_ml");
        var grams = said.GramsOrNone(row + "grams");
        switch (litres, grams)
        {
            case ({ } volume, null):
                return YeastAmount.Of(volume);
            case (null, { } mass):
                return YeastAmount.Of(mass);
            default:
                said.Refuse(row + "amount", new Refusal(litres is null ? "missing" : "one-of-two", "amount", "", ""));
                return YeastAmount.Of(Volume.Zero);
        }
    }
}
