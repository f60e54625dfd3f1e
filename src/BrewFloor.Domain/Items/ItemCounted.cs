using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Items;

/// <summary>What is on the shelf, as found: from here on the books say so too.</summary>
public sealed record ItemCounted(Guid ItemId, StockAmount Amount) : LogEntry
{
    /// <summary>An item that was on the shelf before it was in the books.</summary>
    public NewItem? NewItem { get; init; }

    public override Nature Nature => Nature.Reading;

    public override IEnumerable<Subject> Subjects => [Subject.Item(ItemId)];

    public override IEnumerable<Objection> Objections(Floor before)
    {
        var (item, _) = before.Item(ItemId);
        return StockGuards.Unreadable(item.Name, item.Measure, Amount, mayBeNothing: true);
    }

    public override ItemState Change(ItemState item, Listed<HandedOver> handed) => item.CountedAs(Amount, this);
}
