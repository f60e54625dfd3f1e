namespace BrewFloor.Domain.Log;

/// <summary>Where a subject is now, as its log tells it: facts only. Ages and dates due are worked out when read.</summary>
public abstract record State(Guid Id)
{
    public abstract Subject Subject { get; }

    /// <summary>Entries recorded over a stop that no brewer has answered for yet, with the codes they went over.</summary>
    public Listed<DoneAnyway> Unanswered { get; init; }

    /// <summary>What was allowed here beforehand and isn't used yet.</summary>
    public Listed<Allowance> Allowances { get; init; }

    /// <summary>The state after one more entry: from itself, the entry and what the givers hand over. No clock, no house rules, no things.</summary>
    /// <param name="entry">The next of this subject's entries; one that is about other subjects changes nothing.</param>
    /// <param name="handed">What the entry's givers hand to this subject, as they stood just before it.</param>
    public State After(LogEntry entry, Listed<HandedOver> handed = default)
    {
        if (!entry.Subjects.Contains(Subject))
        {
            return this;
        }

        var after = Changed(entry, handed);
        return after with
        {
            Allowances = after.Allowances.Without(allowance => allowance.Entry != entry.Id && entry.Uses(allowance)),
            Unanswered =
                entry.DoneAnyway is [] || entry.Subjects.First() != Subject
                    ? after.Unanswered
                    : [.. after.Unanswered, new(Moment.Of(entry), entry.DoneAnyway)],
        };
    }

    protected abstract State Changed(LogEntry entry, Listed<HandedOver> handed);
}

/// <summary>An entry that was recorded although the floor said no.</summary>
public sealed record DoneAnyway(Moment Moment, Listed<string> Codes);

/// <summary>What one subject hands to another in an entry: the giver's part as it stood just before.</summary>
/// <remarks>
/// It is input to the taker's fold and kept beside the entry. When a refold of the giver changes it, the taker is folded anew.
/// </remarks>
public abstract record HandedOver(Subject Giver);

/// <summary>Who hands something to whom in an entry.</summary>
public readonly record struct Handover(Subject Giver, Subject Taker);
