namespace BrewFloor.Domain.Log;

/// <summary>What the person said to the objections they were shown; it covers no others.</summary>
/// <param name="Reason">In their own words, or a reason code.</param>
/// <param name="Codes">The codes that stood on the page.</param>
/// <param name="AlreadyHappened">It is not asked, it is told: recorded as done anyway.</param>
public sealed record Answer(string Reason, Listed<string> Codes, bool AlreadyHappened)
{
    public static readonly Answer None = new("", [], AlreadyHappened: false);

    public bool Covers(Objection objection) =>
        !string.IsNullOrWhiteSpace(Reason) && Codes.Contains(objection.Code, StringComparer.Ordinal);
}

/// <summary>What a brewer allowed beforehand on a subject: one entry of a kind, over these stops, until a moment (inclusive).</summary>
public sealed record Allowance(Guid Entry, string EntryKind, Listed<string> Codes, DateTimeOffset Until)
{
    /// <summary>Only for entries about this batch; null: about any.</summary>
    public Guid? BatchId { get; init; }

    public bool Covers(Objection objection) => Codes.Contains(objection.Code, StringComparer.Ordinal);
}

/// <summary>All objections to one entry, in the order a person would fix them, and what was allowed beforehand.</summary>
public sealed record Verdict(Nature Nature, Listed<Objection> Objections, Listed<Allowance> Allowed)
{
    /// <summary>An order can still be withheld; what was done cannot.</summary>
    public bool CanHaveHappened => Nature is Nature.Done;

    /// <summary>What still stands in the way: all but the stops that a brewer allowed beforehand.</summary>
    public IEnumerable<Objection> Standing => Objections.Where(o => o.Level is not Level.Stop || !WasAllowed(o));

    /// <summary>Whether the entry may be written with this answer.</summary>
    public bool Allows(Answer answer) =>
        Objections.All(objection =>
            objection.Level switch
            {
                Level.Impossible => false,
                Level.Caution => answer.Covers(objection),
                Level.Stop => WasAllowed(objection) || IsDoneAnyway(objection, answer),
                _ => IsDoneAnyway(objection, answer),
            }
        );

    /// <summary>The stops (of either kind) that an entry written with this answer was recorded over.</summary>
    public Listed<string> DoneAnyway(Answer answer) =>
        [
            .. Objections
                .Where(o => o.Level is Level.Stop or Level.HardStop)
                .Where(o => o.Level is Level.HardStop || !WasAllowed(o))
                .Where(o => IsDoneAnyway(o, answer))
                .Select(o => o.Code),
        ];

    private bool WasAllowed(Objection objection) => Allowed.Any(allowance => allowance.Covers(objection));

    private bool IsDoneAnyway(Objection objection, Answer answer) =>
        CanHaveHappened && answer.AlreadyHappened && answer.Covers(objection);
}
