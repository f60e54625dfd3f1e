namespace BrewFloor.Domain.Log;

/// <summary>Words about anything; they stand in the note.</summary>
public sealed record Noted(Subject About) : LogEntry
{
    public override IEnumerable<Subject> Subjects => [About];

    public override IEnumerable<Objection> Objections(Floor before) => [];
}
