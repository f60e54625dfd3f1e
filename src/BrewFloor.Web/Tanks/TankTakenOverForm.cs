using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Web.Log;

namespace BrewFloor.Web.Tanks;

/// <summary>The form of <see cref="TankTakenOver"/>.</summary>
public sealed class TankTakenOverForm : EntryForm
{
    public override string Kind => "tank-taken-over";

    public override IEnumerable<Field> Fields(FormFloor floor) =>
        [
            new ChoiceField("soil", floor.Choices<Soil>()) { IsRequired = true },
            new ChoiceField("closure", floor.Choices<Closure>()) { IsRequired = true, Start = nameof(Closure.Vented) },
            new ChoiceField("gas", floor.Choices<Gas>()) { IsRequired = true, Start = nameof(Gas.Unknown) },
            new ChoiceField(
                "contents",
                floor.Choices(Holding.Nothing, Holding.Water, Holding.Cleaner, Holding.Sanitizer, Holding.Unknown)
            )
            {
                Start = nameof(Holding.Nothing),
            },
            new ChoiceField("bath", floor.Choices<BathKind>()) { Hint = "hint.bath-unknown" },
            new DayField("dried-on"),
            new FlagField("never"),
            new FlagField("mixed-culture"),
            new FlagField("allergen"),
        ];

    public override IEnumerable<LogEntry> Read(FormReader said, FormFloor floor)
    {
        return
        [
            new TankTakenOver(floor.TankId)
            {
                Soil = said.Choice<Soil>("soil"),
                Closure = said.Choice<Closure>("closure"),
                Gas = said.Choice<Gas>("gas"),
                Contents = said.ChoiceOrNone<Holding>("contents") ?? Holding.Nothing,
                Bath = said.ChoiceOrNone<BathKind>("bath"),
                DriedOn = said.DayOrNone("dried-on"),
                IsNeverPassivated = said.Flag("never"),
                ExposedTo = [.. Exposures(said)],
            },
        ];
    }

    public override bool IsOffered(FormFloor floor) => floor.IsNew;

    public override int Likelihood(FormFloor floor) => floor.IsNew ? 90 : 0;

    private static IEnumerable<ExposureKind> Exposures(FormReader said)
    {
        if (said.Flag("mixed-culture"))
        {
            yield return ExposureKind.MixedCulture;
        }

        if (said.Flag("allergen"))
        {
            yield return ExposureKind.Allergen;
        }
    }
}
