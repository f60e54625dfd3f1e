using BrewFloor.Domain.Log;

namespace BrewFloor.Web.Log;

/// <summary>The form of <see cref="Noted"/>.</summary>
public sealed class NotedForm : EntryForm
{
    public override string Kind => "noted";

    public override IEnumerable<Field> Fields(FormFloor floor) => [];

    public override IEnumerable<LogEntry> Read(FormReader said, FormFloor floor) => [new Noted(floor.Subject)];
}
