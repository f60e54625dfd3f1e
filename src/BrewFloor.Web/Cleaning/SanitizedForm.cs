using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Log;
using BrewFloor.Web.Items;
using BrewFloor.Web.Log;

namespace BrewFloor.Web.Cleaning;

/// <summary>The form of <see cref="Sanitized"/>.</summary>
public sealed class SanitizedForm : EntryForm
{
    public override string Kind => "sanitized";

    public override IEnumerable<Field> Fields(FormFloor floor) =>
        [
            new ChoiceField("agent", floor.Choices([.. Enum.GetValues<Agent>().Where(Agents.IsSanitizer)]))
            {
                IsRequired = true,
            },
            new ChoiceField("how", floor.Choices<Way>()) { IsRequired = true },
            new TextField("concentration"),
            new QuantityField("temperature", Measure.Temperature),
            new QuantityField("minutes", Measure.Minutes),
            new QuantityField("label-minutes", Measure.Minutes) { IsExtra = true },
            .. StockFields.Taken(floor),
        ];

    public override IEnumerable<LogEntry> Read(FormReader said, FormFloor floor)
    {
        return
        [
            new Sanitized(floor.TankId, said.Choice<Agent>("agent"), said.Choice<Way>("how"))
            {
                Used = StockFields.ReadTaken(said, floor),
                Concentration = said.TextOrNone("concentration"),
                Temperature = said.DegreesOrNone("temperature"),
                Minutes = said.MinutesOrNone("minutes"),
                LabelMinutes = said.MinutesOrNone("label-minutes"),
            },
        ];
    }

    public override IEnumerable<string> Cautions(FormFloor floor) => ["caution.acid", "caution.hot", "caution.suck-in"];

    public override bool IsOffered(FormFloor floor) => !floor.HoldsBeer;

    public override int Likelihood(FormFloor floor) =>
        floor.HoldsBeer ? 0
        : floor.Is(Soil.Clean) ? 93
        : 5;
}
