using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Items;

/// <summary>Some was taken for work that isn't an entry about a tank: kegs washed, a line purged.</summary>
public sealed record ItemUsed(Guid ItemId, StockAmount Amount) : LogEntry
{
    /// <summary>"Keg washing".</summary>
    public string? What { get; init; }

    public override IEnumerable<Subject> Subjects => [Subject.Item(ItemId)];

    public override IEnumerable<Objection> Objections(Floor before) => StockGuards.Taking(before.Item(ItemId), Amount);

    public override ItemState Change(ItemState item, Listed<HandedOver> handed) => item.Without(Amount, this);
}
