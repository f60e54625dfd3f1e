using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Web.Log;

namespace BrewFloor.Web.Tanks;

/// <summary>The form of <see cref="LevelMeasured"/>.</summary>
public sealed class LevelMeasuredForm : EntryForm
{
    public override string Kind => "level-measured";

    public override IEnumerable<Field> Fields(FormFloor floor) =>
        [
            new QuantityField("volume", Measure.Volume) { IsBig = true },
            new QuantityField("level", Measure.Level) { Hint = "hint.level-instead" },
            new QuantityField("temperature", Measure.Temperature) { IsExtra = true },
        ];

    public override IEnumerable<LogEntry> Read(FormReader said, FormFloor floor)
    {
        var (litres, level) = Amounts.Read(said, floor);
        return
        [
            new LevelMeasured(floor.TankId, litres)
            {
                BatchId = floor.BatchIdOrNone,
                Level = level,
                TankVersion = level is null ? null : floor.Tank?.Version,
                Temperature = said.DegreesOrNone("temperature"),
            },
        ];
    }
}
