using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Log;
using BrewFloor.Web.Log;

namespace BrewFloor.Web.Cleaning;

/// <summary>The form of <see cref="Cleared"/>.</summary>
public sealed class ClearedForm : EntryForm
{
    public override string Kind => "cleared";

    public override IEnumerable<Field> Fields(FormFloor floor) =>
        [new ChoiceField("kind", floor.Choices<ExposureKind>()) { IsRequired = true }];

    public override IEnumerable<LogEntry> Read(FormReader said, FormFloor floor) =>
        [new Cleared(floor.TankId, said.Choice<ExposureKind>("kind"))];

    public override IEnumerable<string> Cautions(FormFloor floor) => ["caution.pressure", "caution.no-entry"];

    public override bool IsOffered(FormFloor floor) => floor.TankState?.ExposedTo.Count > 0;
}
