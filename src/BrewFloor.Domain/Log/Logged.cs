namespace BrewFloor.Domain.Log;

/// <summary>What the log knows of an entry that somebody wants to strike or correct.</summary>
/// <param name="Id">Its own.</param>
/// <param name="Kind">Its stored name.</param>
/// <param name="LoggedBy">The account or token.</param>
/// <param name="At">When it happened, as its latest correction says.</param>
public sealed record Logged(Guid Id, string Kind, Guid LoggedBy, DateTimeOffset At)
{
    public bool IsStruck { get; init; }

    /// <summary>A correction that a later one of the same entry has taken the place of.</summary>
    public bool IsReplaced { get; init; }
}

/// <summary>What may be struck and what corrected: facts of the log, whoever asks.</summary>
public static class Mending
{
    private const string Corrected = "corrected";
    private const string Struck = "struck";

    /// <param name="entry">The correction.</param>
    /// <param name="target">The entry it names; null: there is none.</param>
    public static IEnumerable<Objection> Objections(Corrected entry, Logged? target)
    {
        if (target is null)
        {
            yield return NoSuchEntry(entry.Entry);
        }
        else if (target.IsStruck)
        {
            yield return Objection.Impossible("entry-struck", new("entry", target.Id), new("at", target.At));
        }
        else if (target.Kind is Corrected or Struck)
        {
            // References point to the first id: a correction of a correction names the entry that both are about.
            yield return Objection.Impossible("cannot-be-corrected", new("entry", target.Id), new("kind", target.Kind));
        }
    }

    /// <param name="entry">The strike.</param>
    /// <param name="targets">Those of the entries it names that there are.</param>
    public static IEnumerable<Objection> Objections(Struck entry, IReadOnlyCollection<Logged> targets) =>
        from id in entry.Entries
        let objection = To(id, targets.FirstOrDefault(target => target.Id == id))
        where objection is not null
        select objection;

    private static Objection? To(Guid id, Logged? target) =>
        target switch
        {
            null => NoSuchEntry(id),
            { IsStruck: true } => Objection.Impossible("entry-struck", new("entry", id), new("at", target.At)),
            { Kind: Struck } => Objection.Impossible("cannot-be-struck", new("entry", id), new("kind", target.Kind)),
            { IsReplaced: true } => Objection.Impossible("not-the-latest", new("entry", id), new("at", target.At)),
            _ => null,
        };

    private static Objection NoSuchEntry(Guid id) => Objection.Impossible("no-such-entry", new Number("entry", id));
}
