using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Web.Items;
using BrewFloor.Web.Log;

namespace BrewFloor.Web.Tanks;

/// <summary>The form of <see cref="GasketChanged"/>.</summary>
public sealed class GasketChangedForm : EntryForm
{
    public override string Kind => "gasket-changed";

    public override IEnumerable<Field> Fields(FormFloor floor) =>
        [
            new TextField("what") { IsRequired = true, Suggestions = floor.Offers("offer.gaskets") },
            .. StockFields.Taken(floor),
        ];

    public override IEnumerable<LogEntry> Read(FormReader said, FormFloor floor) =>
        [new GasketChanged(floor.TankId, said.RequiredText("what")) { Used = StockFields.ReadTaken(said, floor) }];

    public override IEnumerable<string> Cautions(FormFloor floor) => ["caution.pressure"];
}
