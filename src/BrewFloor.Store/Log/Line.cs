using BrewFloor.Domain;
using BrewFloor.Domain.Log;

namespace BrewFloor.Store.Log;

/// <summary>An entry as it stands on its subjects' timelines: with the words of its latest correction, under its first id.</summary>
/// <param name="WordsId">The stored entry whose words these are.</param>
/// <param name="Handed">What its givers handed over when it was last folded.</param>
internal sealed record Line(LogEntry Entry, long Seq, Guid WordsId, Listed<Handed> Handed)
{
    /// <summary>A subject's state after this line. A correction and a strike are marks in the log: what they change stands elsewhere.</summary>
    public State After(State state, Listed<Handed> handed) =>
        Entry is Corrected or Struck
            ? state
            : state.After(Entry, [.. handed.Where(h => h.Taker == state.Subject).Select(h => h.Value)]);
}

/// <summary>What a taker was handed.</summary>
internal readonly record struct Handed(Subject Taker, HandedOver Value)
{
    public bool IsSameAs(Handed other) =>
        Taker == other.Taker
        && Value.GetType() == other.Value.GetType()
        && string.Equals(FloorJson.Of(Value), FloorJson.Of(other.Value), StringComparison.Ordinal);
}

/// <summary>A place on the timeline: what stood there, what stands there now, and who asks for it.</summary>
internal sealed record Step(DateTimeOffset At, long Seq)
{
    /// <summary>As it stood; null: nothing did.</summary>
    public Line? Was { get; init; }

    /// <summary>As it stands after the request; null: it leaves.</summary>
    public Line? Now { get; init; }

    /// <summary>The request's entry that is judged here.</summary>
    public Sent? Asked { get; init; }

    /// <summary>The request's entry that makes the difference here.</summary>
    public Guid? Cause { get; init; }

    public static Step Kept(Line line) => new(line.Entry.At, line.Seq) { Was = line, Now = line };
}
