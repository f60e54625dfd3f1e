using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Web.Log;

namespace BrewFloor.Web.Tanks;

/// <summary>The form of <see cref="Emptied"/>.</summary>
public sealed class EmptiedForm : EntryForm
{
    public override string Kind => "emptied";

    public override IEnumerable<Field> Fields(FormFloor floor) =>
        [new QuantityField("heel", Measure.Volume) { Start = "0", IsRequired = true }];

    public override IEnumerable<LogEntry> Read(FormReader said, FormFloor floor) =>
        [new Emptied(floor.TankId, floor.BatchId, said.Litres("heel"))];

    public override bool IsOffered(FormFloor floor) => floor.HoldsBeer;
}
