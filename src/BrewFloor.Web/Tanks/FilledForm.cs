using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Web.Log;

namespace BrewFloor.Web.Tanks;

/// <summary>The form of <see cref="Filled"/>.</summary>
public sealed class FilledForm : EntryForm
{
    public override string Kind => "filled";

    public override IEnumerable<Field> Fields(FormFloor floor) =>
        [
            new QuantityField("volume", Measure.Volume) { IsBig = true },
            new QuantityField("level", Measure.Level) { Hint = "hint.level-instead" },
            .. NewBatchFields.For(floor),
            new QuantityField("gravity", Measure.Gravity),
            new QuantityField("temperature", Measure.Temperature),
            new TextField("onto-cake") { IsExtra = true },
        ];

    public override IEnumerable<LogEntry> Read(FormReader said, FormFloor floor)
    {
        var (id, brought) = NewBatchFields.Read(said, floor);
        var (litres, level) = Amounts.Read(said, floor);
        return
        [
            new Filled(floor.TankId, id, litres)
            {
                NewBatch = brought is null
                    ? null
                    : brought with
                    {
                        OriginalGravity = brought.OriginalGravity ?? said.SpecificGravityOrNone("gravity"),
                    },
                Level = level,
                TankVersion = level is null ? null : floor.Tank?.Version,
                Temperature = said.DegreesOrNone("temperature"),
                Gravity = said.GravityOrNone("gravity", Domain.Batches.Instrument.Hydrometer, null),
                OntoCake = said.TextOrNone("onto-cake"),
            },
        ];
    }

    public override IEnumerable<string> Cautions(FormFloor floor) => ["caution.hot-wort", "caution.fill-vent"];

    public override bool IsOffered(FormFloor floor) => !floor.HoldsBeer;

    public override int Likelihood(FormFloor floor) =>
        floor.HoldsBeer ? 0
        : floor.Is(Soil.Sanitized) ? 95
        : 20;
}
