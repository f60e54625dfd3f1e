using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Log;
using BrewFloor.Web.Log;
using BrewFloor.Web.Tanks;

namespace BrewFloor.Web.Cleaning;

/// <summary>The form of <see cref="Inspected"/>.</summary>
public sealed class InspectedForm : EntryForm
{
    public override string Kind => "inspected";

    public override IEnumerable<Field> Fields(FormFloor floor) =>
        [
            new ChoiceField("how", floor.Choices<InspectedHow>()) { IsRequired = true },
            PassedField.Of(floor),
            new TextField("value") { IsNumber = true, IsExtra = true },
        ];

    public override IEnumerable<LogEntry> Read(FormReader said, FormFloor floor) =>
        [
            new Inspected(floor.TankId, said.Choice<InspectedHow>("how"), PassedField.Read(said))
            {
                Value = said.FigureOrNone("value"),
            },
        ];

    public override IEnumerable<string> Cautions(FormFloor floor) => ["caution.no-entry"];

    public override bool IsOffered(FormFloor floor) => !floor.HoldsBeer;

    public override int Likelihood(FormFloor floor) =>
        floor.HoldsBeer ? 0
        : floor.TankState?.RinsedAfterWash is not null && floor.TankState.Soil is not Soil.Clean and not Soil.Sanitized
            ? 91
        : 5;
}
