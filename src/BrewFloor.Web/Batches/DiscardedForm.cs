using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Log;
using BrewFloor.Web.Log;

namespace BrewFloor.Web.Batches;

/// <summary>The form of <see cref="Discarded"/>.</summary>
public sealed class DiscardedForm : EntryForm
{
    public override string Kind => "discarded";

    public override IEnumerable<Field> Fields(FormFloor floor) =>
        [
            new QuantityField("volume", Measure.Volume) { IsBig = true, IsRequired = true },
            new TextField("why") { IsRequired = true },
            new FlagField("rest") { Start = "true" },
        ];

    public override IEnumerable<LogEntry> Read(FormReader said, FormFloor floor) =>
        [
            new Discarded(floor.TankId, floor.BatchId, said.Litres("volume"), said.RequiredText("why"))
            {
                IsRest = said.Flag("rest"),
            },
        ];

    public override IEnumerable<string> Cautions(FormFloor floor) => ["caution.pressure", "caution.co2"];

    public override bool IsOffered(FormFloor floor) => floor.HoldsBeer;
}
