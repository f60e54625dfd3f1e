namespace BrewFloor.Domain.Log;

/// <summary>In the order in which they are locked.</summary>
public enum SubjectKind
{
    Tank,
    Batch,
    Culture,
    Item,
}

/// <summary>What an entry is about.</summary>
public readonly record struct Subject(SubjectKind Kind, Guid Id)
{
    public static Subject Tank(Guid id) => new(SubjectKind.Tank, id);

    public static Subject Batch(Guid id) => new(SubjectKind.Batch, id);

    public static Subject Culture(Guid id) => new(SubjectKind.Culture, id);

    public static Subject Item(Guid id) => new(SubjectKind.Item, id);
}

/// <summary>When something happened, and the entry that says so.</summary>
/// <remarks>The entry is what a job points to: the same cause never makes a second job.</remarks>
public readonly record struct Moment(DateTimeOffset At, Guid Entry)
{
    public static Moment Of(LogEntry entry) => new(entry.At, entry.Id);
}
