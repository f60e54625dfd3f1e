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

    /// <summary>What stands in the log in place of the corrected entry.</summary>
    public LogEntry Standing => Replacement with { Id = Entry };

    public override IEnumerable<Objection> Objections(Floor before)
    {
        if (string.IsNullOrWhiteSpace(Reason))
        {
            yield return Objection.Impossible("no-reason");
        }

        if (Replacement is Corrected or Struck)
        {
            yield return Objection.Impossible("not-a-correction", new Number("kind", EntryKinds.NameOf(Replacement)));
        }
    }

    /// <summary>What the floor says to the entry as it should have been, also on a tank that was retired since.</summary>
    /// <param name="before">The floor just before the new time, without the entry as it was.</param>
    public Verdict StandingJudgedOn(Floor before)
    {
        var verdict = Standing.JudgedOn(before);
        return verdict with { Objections = verdict.Objections.Without(o => o.Code is EveryKind.TankRetired) };
    }
}
