using BrewFloor.Domain;
using BrewFloor.Domain.Log;

namespace BrewFloor.Web.Log;

/// <summary>One line of a timeline as a page shows it.</summary>
/// <param name="Entry">As it counts now: with the words of its latest correction.</param>
/// <param name="Who">Who did it, or logged it.</param>
public sealed record TimelineLine(LogEntry Entry, string Who)
{
    public required string Kind { get; init; }

    /// <summary>The codes of tanks and the strains of cultures, for entries that name several.</summary>
    public required IReadOnlyDictionary<Guid, string> Things { get; init; }

    public bool IsStruck { get; init; }

    /// <summary>Why it was corrected or struck.</summary>
    public string? ChangedBecause { get; init; }

    public string? ChangedBy { get; init; }

    /// <summary>What was said to the objections it was written over.</summary>
    public string? Reason { get; init; }

    public Listed<Objection> Objections { get; init; }

    /// <summary>What it would hear today, because something before it changed.</summary>
    public Listed<Objection> SeenAfterwards { get; init; }

    public bool IsCorrected { get; init; }

    /// <summary>How far the clock it was sent by was ahead of ours (below zero: behind); its time is put right by as much.</summary>
    public TimeSpan? Skew { get; init; }

    /// <summary>The tank it is about, where the page is about something else.</summary>
    public string? TankCode { get; init; }
}
