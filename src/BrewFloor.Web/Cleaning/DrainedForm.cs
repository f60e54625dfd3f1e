using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Web.Log;

namespace BrewFloor.Web.Cleaning;

/// <summary>The form of <see cref="Drained"/>.</summary>
public sealed class DrainedForm : EntryForm
{
    public override string Kind => "drained";

    public override IEnumerable<Field> Fields(FormFloor floor) =>
        [
            new ChoiceField("held", floor.Choices(Closure.Closed, Closure.Sealed, Closure.Vented, Closure.Open))
            {
                IsRequired = true,
            },
            new FlagField("under-co2"),
        ];

    public override IEnumerable<LogEntry> Read(FormReader said, FormFloor floor) =>
        [new Drained(floor.TankId, said.Choice<Closure>("held")) { IsUnderCarbonDioxide = said.Flag("under-co2") }];

    public override IEnumerable<string> Cautions(FormFloor floor) =>
        ["caution.drained", "caution.pressure", "caution.co2"];

    public override bool IsOffered(FormFloor floor) => !floor.HoldsBeer;

    public override int Likelihood(FormFloor floor) =>
        floor.TankState?.Contents.What is Holding.Sanitizer or Holding.Cleaner or Holding.Bath or Holding.Water
            ? 94
            : 0;
}
