using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Web.Log;

namespace BrewFloor.Web.Tanks;

/// <summary>The form of <see cref="Vented"/>.</summary>
public sealed class VentedForm : EntryForm
{
    public override string Kind => "vented";

    public override IEnumerable<Field> Fields(FormFloor floor) => [];

    public override IEnumerable<LogEntry> Read(FormReader said, FormFloor floor) =>
        [new Vented(floor.TankId) { BatchId = floor.BatchIdOrNone }];

    public override IEnumerable<string> Cautions(FormFloor floor) => ["caution.pressure", "caution.co2"];
}
