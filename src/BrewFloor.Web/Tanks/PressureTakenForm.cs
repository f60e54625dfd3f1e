using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Web.Log;

namespace BrewFloor.Web.Tanks;

/// <summary>The form of <see cref="PressureTaken"/>.</summary>
public sealed class PressureTakenForm : EntryForm
{
    public override string Kind => "pressure";

    public override IEnumerable<Field> Fields(FormFloor floor) =>
        [new QuantityField("pressure", Measure.Pressure) { IsBig = true, IsRequired = true }];

    public override IEnumerable<LogEntry> Read(FormReader said, FormFloor floor) =>
        [new PressureTaken(floor.TankId, said.Gauge("pressure"))];

    public override bool IsOffered(FormFloor floor) =>
        floor.Tank?.Rating is not null || floor.Tank?.Type is not TankType.Bucket;

    public override int Likelihood(FormFloor floor) => floor.HoldsBeer && floor.Tank?.Rating is not null ? 45 : 0;
}
