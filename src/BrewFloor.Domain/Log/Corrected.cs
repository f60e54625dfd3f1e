namespace BrewFloor.Domain.Log;

/// <summary>An entry as it should have been. It stands at its own new time, in the place of the old one.</summary>
/// <param name="Entry">The first id of the corrected entry.</param>
/// <param name="Replacement">The whole entry anew, time and subjects included, under the first id.</param>
/// <param name="Reason">Why.</param>
public sealed record Corrected(Guid Entry, LogEntry Replacement, string Reason) : LogEntry
{
    /// <summary>The subjects of the entry as it stood; the store fills them in.</summary>
    public Listed<Subject> Touched { get; init; }

    public override Nature Nature => Replacement.Nature;

    public override IEnumerable<Subject> Subjects => [.. Replacement.Subjects.Union(Touched)];

    public override IEnumerable<Objection> Objections(Floor before) => [];
}
