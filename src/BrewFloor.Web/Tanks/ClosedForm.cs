using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Web.Log;

namespace BrewFloor.Web.Tanks;

/// <summary>The form of <see cref="Closed"/>.</summary>
public sealed class ClosedForm : EntryForm
{
    public override string Kind => "closed";

    public override IEnumerable<Field> Fields(FormFloor floor) =>
        [
            new ChoiceField("closure", floor.Choices(Closure.Vented, Closure.Closed, Closure.Sealed))
            {
                IsRequired = true,
            },
        ];

    public override IEnumerable<LogEntry> Read(FormReader said, FormFloor floor) =>
        [new Closed(floor.TankId) { Closure = said.Choice<Closure>("closure"), BatchId = floor.BatchIdOrNone }];

    public override IEnumerable<string> Cautions(FormFloor floor) => ["caution.pressure"];
}
