using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Web.Log;

namespace BrewFloor.Web.Tanks;

/// <summary>The form of <see cref="PressureSet"/>.</summary>
public sealed class PressureSetForm : EntryForm
{
    public override string Kind => "pressure-set";

    public override IEnumerable<Field> Fields(FormFloor floor) =>
        [new QuantityField("pressure", Measure.Pressure) { IsBig = true, IsRequired = true }];

    public override IEnumerable<LogEntry> Read(FormReader said, FormFloor floor) =>
        [new PressureSet(floor.TankId, said.Gauge("pressure")) { BatchId = floor.BatchIdOrNone }];

    public override IEnumerable<string> Cautions(FormFloor floor) => ["caution.pressure"];

    public override bool IsOffered(FormFloor floor) => floor.Tank?.Rating is not null;
}
