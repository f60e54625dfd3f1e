using BrewFloor.Domain;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.People;

namespace BrewFloor.Store.Log;

/// <summary>Entries that are written all or not at all, and who hands them in.</summary>
public sealed record LogRequest(Listed<Sent> Entries, Author Author)
{
    public LogRequest(LogEntry entry, Author author)
        : this([new Sent(entry, Answer.None)], author) { }

    /// <summary>Who logged one of the entries.</summary>
    public Author AuthorOf(Sent sent) => sent.LoggedBy ?? Author;
}

/// <summary>An entry, and what was answered to the objections that stood on the page.</summary>
public sealed record Sent(LogEntry Entry, Answer Answer)
{
    /// <summary>Who logged it, where that is somebody else than who hands the request in: a log that is brought along.</summary>
    /// <remarks>What may be written is still judged by who hands it in.</remarks>
    public Author? LoggedBy { get; init; }

    /// <summary>The cautions for the step that stood on the form.</summary>
    public Listed<string> CautionsShown { get; init; }
}

/// <summary>An entry that is in the log.</summary>
/// <param name="Seq">Its place in commit order.</param>
/// <param name="At">When it is taken to have happened.</param>
/// <param name="Again">It was there before: this is the first outcome once more.</param>
public sealed record StoredEntry(Guid Id, long Seq, DateTimeOffset At, bool Again);

/// <summary>What the floor says to an entry.</summary>
public sealed record Judged(Guid Id, Verdict Verdict);

/// <summary>What the floor would say to a request.</summary>
/// <param name="Conflict">This id already stands for something else, so nothing was judged.</param>
/// <param name="Judged">Each entry that isn't in the log yet.</param>
public sealed record Checked(Guid? Conflict, Listed<Judged> Judged);

/// <summary>What became of a request.</summary>
public abstract record Appended
{
    private Appended() { }

    /// <summary>All of it is in the log.</summary>
    public sealed record Stored(Listed<StoredEntry> Entries) : Appended;

    /// <summary>Nothing was written: every objection to every entry. The same ids may come again with answers.</summary>
    public sealed record Refused(Listed<Judged> Entries) : Appended;

    /// <summary>This id already stands for something else.</summary>
    public sealed record Conflict(Guid Id) : Appended;

    /// <summary>What was to be written beside the entries said no: nothing was written.</summary>
    internal sealed record Withheld : Appended;
}
