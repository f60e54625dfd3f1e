using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Items;

/// <summary>What is on the shelf of an item, as its log tells it: facts only.</summary>
public sealed record ItemState(Guid Id) : State(Id)
{
    public override Subject Subject => Subject.Item(Id);

    /// <summary>What is left by the books: as last counted, with what came and went since. Null: nobody ever said.</summary>
    public StockAmount? Amount { get; init; }

    /// <summary>Last received or counted: what a job to buy more hangs on, however often some is used meanwhile.</summary>
    public Moment? Stocked { get; init; }

    /// <summary>The last time the amount changed.</summary>
    public Moment? AmountChanged { get; init; }

    public Moment? LastCounted { get; init; }

    protected override State Changed(LogEntry entry, Listed<HandedOver> handed) => entry.Change(this, handed);

    /// <summary>Some came in.</summary>
    internal ItemState With(StockAmount more, LogEntry entry) =>
        IsOf(more)
            ? this with
            {
                Amount = Amount?.And(more) ?? more,
                Stocked = Moment.Of(entry),
                AmountChanged = Moment.Of(entry),
            }
            : this;

    /// <summary>Some is gone.</summary>
    internal ItemState Without(StockAmount taken, LogEntry entry) =>
        Amount is { } left && IsOf(taken)
            ? this with
            {
                Amount = left.Less(taken),
                AmountChanged = Moment.Of(entry),
            }
            : this;

    /// <summary>As found on the shelf, whatever the books said.</summary>
    internal ItemState CountedAs(StockAmount found, LogEntry entry) =>
        IsOf(found)
            ? this with
            {
                Amount = found,
                Stocked = Moment.Of(entry),
                AmountChanged = Moment.Of(entry),
                LastCounted = Moment.Of(entry),
            }
            : this;

    // What was recorded although it is of another measure changes nothing: it can't be added up.
    private bool IsOf(StockAmount amount) => Amount is not { } left || left.Measure == amount.Measure;
}
