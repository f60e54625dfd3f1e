using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Log;
using BrewFloor.Web.Items;
using BrewFloor.Web.Log;
using BrewFloor.Web.Tanks;

namespace BrewFloor.Web.Cleaning;

/// <summary>Washed, rinsed and inspected in one go: three entries.</summary>
public sealed class CleanedForm : EntryForm
{
    public override string Kind => "cleaned";

    public override IEnumerable<Field> Fields(FormFloor floor) =>
        [
            new ChoiceField("cleaner", floor.Choices<Agent>()) { IsRequired = true },
            new ChoiceField("how", floor.Choices<Way>()) { IsRequired = true },
            new TextField("concentration"),
            new QuantityField("temperature", Measure.Temperature),
            new QuantityField("minutes", Measure.Minutes),
            new QuantityField("label-minutes", Measure.Minutes) { IsExtra = true },
            new ChoiceField("seen", floor.Choices<InspectedHow>())
            {
                IsRequired = true,
                Start = nameof(InspectedHow.Eye),
            },
            PassedField.Of(floor),
            .. StockFields.Taken(floor),
        ];

    public override IEnumerable<LogEntry> Read(FormReader said, FormFloor floor)
    {
        return
        [
            new Washed(floor.TankId, said.Choice<Agent>("cleaner"), said.Choice<Way>("how"))
            {
                Used = StockFields.ReadTaken(said, floor),
                Concentration = said.TextOrNone("concentration"),
                Temperature = said.DegreesOrNone("temperature"),
                Minutes = said.MinutesOrNone("minutes"),
                LabelMinutes = said.MinutesOrNone("label-minutes"),
            },
            new Rinsed(floor.TankId, IsHot: false),
            new Inspected(floor.TankId, said.Choice<InspectedHow>("seen"), PassedField.Read(said)),
        ];
    }

    public override IEnumerable<string> Cautions(FormFloor floor) =>
        ["caution.caustic", "caution.acid", "caution.hot", "caution.suck-in", "caution.no-entry"];

    public override bool IsOffered(FormFloor floor) => !floor.HoldsBeer;

    public override int Likelihood(FormFloor floor) =>
        floor.HoldsBeer ? 0
        : floor.Is(Soil.Soiled) || floor.Is(Soil.Unknown) ? 80
        : 0;
}
