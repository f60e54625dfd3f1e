using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Jobs;

/// <summary>How pressing a job is at a moment.</summary>
public enum Urgency
{
    Soon,
    Due,
    Overdue,
}

/// <summary>Something due: what, on which subject, from when, overdue from when, and the numbers that made it so.</summary>
/// <param name="Rule">The name of the rule, as stored: "re-passivate".</param>
/// <param name="Subject">Whose lock guards it.</param>
/// <param name="Cause">The entry that caused it: with rule and subject its identity.</param>
/// <param name="DueAt">Inclusive.</param>
/// <param name="OverdueAt">Inclusive; days over count from here.</param>
/// <param name="Because">What its text says.</param>
public sealed record Job(
    string Rule,
    Subject Subject,
    Guid Cause,
    DateTimeOffset DueAt,
    DateTimeOffset OverdueAt,
    Listed<Number> Because
)
{
    /// <summary>The tank to walk to, when the subject is a batch.</summary>
    public Guid? TankId { get; init; }

    /// <summary>When the rule will answer otherwise by itself, apart from due and overdue.</summary>
    public DateTimeOffset? ChangesAt { get; init; }

    public Urgency At(DateTimeOffset now) =>
        now >= OverdueAt ? Urgency.Overdue
        : now >= DueAt ? Urgency.Due
        : Urgency.Soon;

    /// <summary>The next moment at which this job must be looked at again; null when only an entry changes it.</summary>
    public DateTimeOffset? NextEdge(DateTimeOffset now)
    {
        DateTimeOffset?[] edges = [DueAt, OverdueAt, ChangesAt];
        return edges.Where(edge => edge > now).Min();
    }
}
