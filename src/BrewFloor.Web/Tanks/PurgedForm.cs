using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Web.Items;
using BrewFloor.Web.Log;

namespace BrewFloor.Web.Tanks;

/// <summary>The form of <see cref="Purged"/>.</summary>
public sealed class PurgedForm : EntryForm
{
    public override string Kind => "purged";

    public override IEnumerable<Field> Fields(FormFloor floor) =>
        [
            new ChoiceField("gas", floor.Choices(Gas.CarbonDioxide, Gas.Air))
            {
                IsRequired = true,
                Start = nameof(Gas.CarbonDioxide),
            },
            new TextField("cycles") { IsNumber = true },
            new TextField("volumes") { IsNumber = true },
            new QuantityField("pressure", Measure.Pressure),
            .. StockFields.Taken(floor),
        ];

    public override IEnumerable<LogEntry> Read(FormReader said, FormFloor floor)
    {
        return
        [
            new Purged(floor.TankId, said.Choice<Gas>("gas"))
            {
                Used = StockFields.ReadTaken(said, floor),
                Cycles = said.WholeOrNone("cycles"),
                Volumes = said.FigureOrNone("volumes"),
                Pressure = said.GaugeOrNone("pressure"),
            },
        ];
    }

    public override IEnumerable<string> Cautions(FormFloor floor) => ["caution.co2", "caution.pressure"];
}
