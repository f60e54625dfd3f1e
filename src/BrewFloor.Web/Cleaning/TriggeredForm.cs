using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Log;
using BrewFloor.Web.Log;

namespace BrewFloor.Web.Cleaning;

/// <summary>The form of <see cref="Triggered"/>.</summary>
public sealed class TriggeredForm : EntryForm
{
    public override string Kind => "triggered";

    public override IEnumerable<Field> Fields(FormFloor floor) =>
        [new ChoiceField("by", floor.Choices<Trigger>()) { IsRequired = true }];

    public override IEnumerable<LogEntry> Read(FormReader said, FormFloor floor) =>
        [new Triggered(floor.TankId, said.Choice<Trigger>("by"))];

    public override bool IsOffered(FormFloor floor) => floor.Tank?.IsStainless is true;
}
