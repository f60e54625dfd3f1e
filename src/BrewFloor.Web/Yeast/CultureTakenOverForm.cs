using BrewFloor.Domain.Log;
using BrewFloor.Domain.Yeast;
using BrewFloor.Web.Log;

namespace BrewFloor.Web.Yeast;

/// <summary>The form of <see cref="CultureTakenOver"/>.</summary>
public sealed class CultureTakenOverForm : EntryForm
{
    public override string Kind => "culture-taken-over";

    public override SubjectKind About => SubjectKind.Culture;

    public override IEnumerable<Field> Fields(FormFloor floor) =>
        [
            .. NewCultureFields.Asked(floor),
            new QuantityField("amount", Measure.SmallVolume) { IsBig = true, Hint = "hint.amount-volume" },
            new QuantityField("grams", Measure.Mass) { Hint = "hint.amount-mass" },
            new TextField("generation")
            {
                IsNumber = true,
                Start = "0",
                IsRequired = true,
            },
            new QuantityField("stored", Measure.Temperature),
        ];

    public override IEnumerable<LogEntry> Read(FormReader said, FormFloor floor)
    {
        return
        [
            new CultureTakenOver(
                NewCultureFields.Read(said, floor),
                NewCultureFields.Amount(said),
                said.Whole("generation")
            )
            {
                StoredAt = said.DegreesOrNone("stored"),
            },
        ];
    }

    public override bool IsOffered(FormFloor floor) => floor.Culture is null;
}
