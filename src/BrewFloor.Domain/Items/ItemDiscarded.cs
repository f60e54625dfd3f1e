using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Items;

/// <summary>Thrown away, and why: past its date, torn, spilt.</summary>
public sealed record ItemDiscarded(Guid ItemId, StockAmount Amount, string Why) : LogEntry
{
    public override IEnumerable<Subject> Subjects => [Subject.Item(ItemId)];

    public override IEnumerable<Objection> Objections(Floor before) => StockGuards.Taking(before.Item(ItemId), Amount);

    public override ItemState Change(ItemState item, Listed<HandedOver> handed) => item.Without(Amount, this);
}
