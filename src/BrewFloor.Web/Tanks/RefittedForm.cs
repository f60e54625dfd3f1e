using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Web.Items;
using BrewFloor.Web.Log;

namespace BrewFloor.Web.Tanks;

/// <summary>The form of <see cref="Refitted"/>.</summary>
public sealed class RefittedForm : EntryForm
{
    public override string Kind => "refitted";

    public override IEnumerable<Field> Fields(FormFloor floor) =>
        [
            new TextField("parts") { IsRequired = true, Suggestions = floor.Offers("offer.parts") },
            .. FittingFields.AreAsked(floor)
                ? [FittingFields.Of(floor, floor.TankState?.ThatCameOff() ?? [])]
                : Array.Empty<Field>(),
            .. StockFields.Taken(floor),
        ];

    public override IEnumerable<LogEntry> Read(FormReader said, FormFloor floor)
    {
        return
        [
            new Refitted(floor.TankId, said.RequiredText("parts"))
            {
                Fitted = FittingFields.Read(said),
                Used = StockFields.ReadTaken(said, floor),
            },
        ];
    }

    public override IEnumerable<string> Cautions(FormFloor floor) => ["caution.pressure"];

    public override int Likelihood(FormFloor floor) => floor.TankState?.PartsOff is not null ? 80 : 0;
}
