namespace BrewFloor.Domain.Log;

/// <summary>Entries that never happened so. Struck entries stay in the log and leave the folds.</summary>
/// <param name="Entries">Their first ids.</param>
/// <param name="Reason">Why.</param>
public sealed record Struck(Listed<Guid> Entries, string Reason) : LogEntry
{
    /// <summary>The subjects of those entries; the store fills them in.</summary>
    public Listed<Subject> Touched { get; init; }

    public override IEnumerable<Subject> Subjects => Touched;

    public override IEnumerable<Objection> Objections(Floor before)
    {
        if (string.IsNullOrWhiteSpace(Reason))
        {
            yield return Objection.Impossible("no-reason");
        }

        if (Entries.Count is 0)
        {
            yield return Objection.Impossible("nothing-to-strike");
        }
    }
}
