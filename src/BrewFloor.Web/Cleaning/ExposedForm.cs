using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Log;
using BrewFloor.Web.Log;

namespace BrewFloor.Web.Cleaning;

/// <summary>The form of <see cref="Exposed"/>.</summary>
public sealed class ExposedForm : EntryForm
{
    public override string Kind => "exposed";

    public override IEnumerable<Field> Fields(FormFloor floor) =>
        [
            new ChoiceField("kind", floor.Choices<ExposureKind>()) { IsRequired = true },
            new TextField("what") { IsRequired = true },
        ];

    public override IEnumerable<LogEntry> Read(FormReader said, FormFloor floor) =>
        [new Exposed(floor.TankId, said.Choice<ExposureKind>("kind"), said.RequiredText("what"))];
}
