using BrewFloor.Domain;
using BrewFloor.Domain.Log;
using BrewFloor.Store.Jobs;

namespace BrewFloor.Store.Log;

/// <summary>A part of the floor at one moment: things, states, rules, and what is due on them.</summary>
/// <param name="Now">The database's clock.</param>
/// <param name="Floor">What guards and derived values read.</param>
/// <param name="Jobs">Open ones, also those not due yet; the most pressing first.</param>
public sealed record FloorView(DateTimeOffset Now, Floor Floor, Listed<OpenJob> Jobs);

/// <summary>A state at some moment, as it is known now or was known then.</summary>
public sealed record AsItWas(State State, DateTimeOffset At, DateTimeOffset? Known);

/// <summary>Whether an entry still counts.</summary>
public enum Mark
{
    Stands,
    Corrected, // another one counts in its place; here are its words
    Moved, // it was corrected to be about something else
    Struck,
}

/// <summary>A line of a timeline, with what is known about its writing.</summary>
/// <param name="Entry">With the words that count now, or counted last.</param>
/// <param name="Seq">Of the first entry.</param>
/// <param name="Recorded">When the first entry was written.</param>
public sealed record LogLine(LogEntry Entry, long Seq, DateTimeOffset Recorded, Guid LoggedBy, bool ByToken)
{
    public Mark Mark { get; init; }

    /// <summary>The correction or strike that says so.</summary>
    public Guid? MendedBy { get; init; }

    /// <summary>As judged when the words that count were written.</summary>
    public Listed<Objection> Objections { get; init; }

    public string? Reason { get; init; }

    public Listed<string> Answered { get; init; }

    public bool AlreadyHappened { get; init; }

    public Listed<string> CautionsShown { get; init; }

    /// <summary>What it would hear today, because something before it changed.</summary>
    public Listed<Objection> SeenAfterwards { get; init; }

    /// <summary>How far the sender's clock was ahead of ours, when that moved its time.</summary>
    public TimeSpan? Skew { get; init; }
}

/// <summary>Some of a list; <paramref name="Next"/> asks for the rest.</summary>
public sealed record Page<T>(Listed<T> Items, string? Next);
