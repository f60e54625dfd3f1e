using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Log;
using BrewFloor.Web.Log;

namespace BrewFloor.Web.Batches;

/// <summary>The form of <see cref="PhTaken"/>.</summary>
public sealed class PhTakenForm : EntryForm
{
    public override string Kind => "ph";

    public override IEnumerable<Field> Fields(FormFloor floor) =>
        [new QuantityField("ph", Measure.Plain) { IsBig = true, IsRequired = true }];

    public override IEnumerable<LogEntry> Read(FormReader said, FormFloor floor) =>
        [new PhTaken(floor.TankId, said.Figure("ph")) { BatchId = floor.BatchIdOrNone }];

    public override bool IsOffered(FormFloor floor) => floor.HoldsBeer;
}
