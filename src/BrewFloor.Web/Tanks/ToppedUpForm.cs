using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Web.Log;

namespace BrewFloor.Web.Tanks;

/// <summary>The form of <see cref="ToppedUp"/>.</summary>
public sealed class ToppedUpForm : EntryForm
{
    public override string Kind => "topped-up";

    public override IEnumerable<Field> Fields(FormFloor floor) =>
        [
            new QuantityField("volume", Measure.Volume) { IsBig = true },
            new QuantityField("level", Measure.Level) { Hint = "hint.level-added", IsExtra = true },
            new QuantityField("gravity", Measure.Gravity),
            new QuantityField("temperature", Measure.Temperature),
        ];

    public override IEnumerable<LogEntry> Read(FormReader said, FormFloor floor)
    {
        var (litres, level) = Amounts.Read(said, floor);
        return
        [
            new ToppedUp(floor.TankId, floor.BatchId, litres)
            {
                Level = level,
                TankVersion = level is null ? null : floor.Tank?.Version,
                Temperature = said.DegreesOrNone("temperature"),
                Gravity = said.GravityOrNone("gravity", Domain.Batches.Instrument.Hydrometer, null),
            },
        ];
    }

    public override IEnumerable<string> Cautions(FormFloor floor) => ["caution.hot-wort", "caution.fill-vent"];

    public override bool IsOffered(FormFloor floor) => floor.HoldsBeer;
}
