using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Items;

/// <summary>A delivery was put on the shelf.</summary>
public sealed record ItemReceived(Guid ItemId, StockAmount Amount) : LogEntry
{
    /// <summary>An item that was never kept before.</summary>
    public NewItem? NewItem { get; init; }

    public override IEnumerable<Subject> Subjects => [Subject.Item(ItemId)];

    public override IEnumerable<Objection> Objections(Floor before)
    {
        var (item, _) = before.Item(ItemId);
        return StockGuards.Unreadable(item.Name, item.Measure, Amount, mayBeNothing: false);
    }

    public override ItemState Change(ItemState item, Listed<HandedOver> handed) => item.With(Amount, this);
}
