using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Log;
using BrewFloor.Web.Items;
using BrewFloor.Web.Log;

namespace BrewFloor.Web.Cleaning;

/// <summary>The form of <see cref="Passivated"/>.</summary>
public sealed class PassivatedForm : EntryForm
{
    public override string Kind => "passivated";

    public override IEnumerable<Field> Fields(FormFloor floor) =>
        [
            new ChoiceField("bath", floor.Choices<BathKind>()) { IsRequired = true },
            new TextField("concentration"),
            new QuantityField("temperature", Measure.Temperature),
            new QuantityField("minutes", Measure.Minutes),
            new FlagField("rinsed"),
            .. StockFields.Taken(floor),
        ];

    public override IEnumerable<LogEntry> Read(FormReader said, FormFloor floor)
    {
        return
        [
            new Passivated(floor.TankId, said.Choice<BathKind>("bath"))
            {
                Used = StockFields.ReadTaken(said, floor),
                Concentration = said.TextOrNone("concentration"),
                Temperature = said.DegreesOrNone("temperature"),
                Minutes = said.MinutesOrNone("minutes"),
                IsRinsed = said.Flag("rinsed"),
            },
        ];
    }

    public override IEnumerable<string> Cautions(FormFloor floor) => ["caution.acid-bath", "caution.hot"];

    public override bool IsOffered(FormFloor floor) => !floor.HoldsBeer && floor.Tank?.IsStainless is true;

    public override int Likelihood(FormFloor floor) => floor.HoldsJob("re-passivate") ? 88 : 0;
}
