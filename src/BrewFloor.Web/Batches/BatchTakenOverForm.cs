using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Log;
using BrewFloor.Web.Log;
using BrewFloor.Web.Tanks;

namespace BrewFloor.Web.Batches;

/// <summary>The form of <see cref="BatchTakenOver"/>.</summary>
public sealed class BatchTakenOverForm : EntryForm
{
    public override string Kind => "batch-taken-over";

    public override IEnumerable<Field> Fields(FormFloor floor) =>
        [
            .. NewBatchFields.Asked(floor),
            new QuantityField("volume", Measure.Volume) { Hint = "hint.volume-unknown" },
            new QuantityField("gravity", Measure.Gravity),
            new MomentField("filled-at"),
            new MomentField("pitched-at"),
            new TextField("generation") { IsNumber = true },
        ];

    public override IEnumerable<LogEntry> Read(FormReader said, FormFloor floor)
    {
        var brought = NewBatchFields.Brought(said, floor);
        return
        [
            new BatchTakenOver(floor.TankId, brought)
            {
                Volume = said.LitresOrNone("volume"),
                Gravity = said.GravityOrNone("gravity", Instrument.Hydrometer, null),
                FilledAt = said.MomentOrNone("filled-at"),
                PitchedAt = said.MomentOrNone("pitched-at"),
                Generation = said.WholeOrNone("generation"),
            },
        ];
    }

    public override bool IsOffered(FormFloor floor) => !floor.HoldsBeer;

    public override int Likelihood(FormFloor floor) => floor.IsNew ? 85 : 0;
}
