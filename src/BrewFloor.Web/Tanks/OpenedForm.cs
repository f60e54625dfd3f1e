using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Web.Log;

namespace BrewFloor.Web.Tanks;

/// <summary>The form of <see cref="Opened"/>.</summary>
public sealed class OpenedForm : EntryForm
{
    public override string Kind => "opened";

    public override IEnumerable<Field> Fields(FormFloor floor) =>
        [new TextField("what") { Suggestions = floor.Offers("offer.opened") }];

    public override IEnumerable<LogEntry> Read(FormReader said, FormFloor floor) =>
        [new Opened(floor.TankId) { What = said.TextOrNone("what"), BatchId = floor.BatchIdOrNone }];

    public override IEnumerable<string> Cautions(FormFloor floor) => ["caution.pressure", "caution.co2"];
}
