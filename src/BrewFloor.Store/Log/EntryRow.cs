namespace BrewFloor.Store.Log;

/// <summary>One line of the log as stored: written once, never changed.</summary>
internal sealed class EntryRow
{
    public required Guid Id { get; init; }

    /// <summary>Its place in commit order.</summary>
    public required long Seq { get; init; }

    public required DateTimeOffset At { get; init; }

    /// <summary>The database's clock, read once the subjects were locked.</summary>
    public required DateTimeOffset Recorded { get; init; }

    public required string Kind { get; init; }

    public required int Version { get; init; }

    public required string Payload { get; init; }

    public DateTimeOffset? SentAt { get; init; }

    /// <summary>How far the sender's clock was ahead of ours, when that moved <see cref="At"/>; in ms.</summary>
    public long? SkewMs { get; init; }

    public required Guid[] DoneBy { get; init; }

    public string? Note { get; init; }

    public required Guid LoggedBy { get; init; }

    public required bool ByToken { get; init; }

    /// <summary>As judged: codes, levels, guards' versions, numbers.</summary>
    public required string Objections { get; init; }

    public required int HouseRulesVersion { get; init; }

    public string? Reason { get; init; }

    /// <summary>The codes that the reason covers: those that were shown.</summary>
    public required string[] Answered { get; init; }

    public required bool AlreadyHappened { get; init; }

    /// <summary>The stops it was recorded over.</summary>
    public required string[] DoneAnyway { get; init; }

    /// <summary>The cautions for the step that stood on the form.</summary>
    public required string[] CautionsShown { get; init; }

    public required byte[] Hash { get; init; }

    public required short HashVersion { get; init; }
}

/// <summary>A kind and version that the log holds: a program that doesn't know one doesn't start.</summary>
internal sealed class EntryKindRow
{
    public required string Kind { get; init; }

    public required int Version { get; init; }
}

/// <summary>Where an entry stands on the timeline of one of its subjects, from when to when we thought so.</summary>
/// <remarks>
/// The only timeline index. A correction or a strike ends a row and may start another, so that the log can be read as it was
/// known at any time.
/// </remarks>
internal sealed class EntrySubjectRow
{
    public required Guid SubjectId { get; init; }

    /// <summary>tank, batch, culture.</summary>
    public required string SubjectKind { get; init; }

    public required DateTimeOffset At { get; init; }

    /// <summary>Of the first entry, also where a correction stands for it.</summary>
    public required long Seq { get; init; }

    /// <summary>The seq from which it stood here.</summary>
    public required long Since { get; init; }

    /// <summary>The seq that ended it; null: it stands.</summary>
    public long? Until { get; set; }

    /// <summary>The first id: what references point to.</summary>
    public required Guid EntryId { get; init; }

    /// <summary>The entry whose words count: the first, or its latest correction.</summary>
    public required Guid WordsId { get; init; }
}

/// <summary>What a giver handed over in an entry, from when to when we thought so.</summary>
internal sealed class HandedOverRow
{
    public required Guid EntryId { get; init; }

    public required Guid TakerId { get; init; }

    public required Guid GiverId { get; init; }

    /// <summary>In the order in which the entry hands over.</summary>
    public required int Place { get; init; }

    public required long Since { get; init; }

    public long? Until { get; set; }

    public required string Kind { get; init; }

    public required string Value { get; init; }
}

/// <summary>The stored state of a subject: a cache of its fold.</summary>
internal sealed class StateRow
{
    /// <summary>Raised when a fold changes its meaning: older states are folded again.</summary>
    public const int CurrentFold = 3;

    public required Guid SubjectId { get; init; }

    public required string Kind { get; init; }

    public required string State { get; init; }

    public required int FoldVersion { get; init; }

    /// <summary>How many entries stand on its timeline.</summary>
    public required int Entries { get; init; }

    public required DateTimeOffset LastAt { get; init; }

    /// <summary>When its jobs must be looked at again; null: only an entry changes them.</summary>
    public DateTimeOffset? NextEdge { get; init; }
}

/// <summary>A state in the middle of a timeline, every 200 entries; dropped when a refold reaches behind it.</summary>
internal sealed class SnapshotRow
{
    public const int Every = 200;

    public required Guid SubjectId { get; init; }

    public required DateTimeOffset At { get; init; }

    public required long Seq { get; init; }

    /// <summary>The seq that made it: what was known earlier may differ from it.</summary>
    public required long Made { get; init; }

    public required int FoldVersion { get; init; }

    public required int Entries { get; init; }

    public required string State { get; init; }
}

/// <summary>A stop or caution that an entry would hear today, because something before it changed.</summary>
internal sealed class SeenAfterwardsRow
{
    public required Guid EntryId { get; init; }

    public required string Code { get; init; }

    /// <summary>The entry that made it seen.</summary>
    public required Guid By { get; init; }

    public required string Objection { get; init; }
}
