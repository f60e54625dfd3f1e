using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Items;

/// <summary>Taken from the stock for some work.</summary>
public readonly record struct Used(Guid ItemId, StockAmount Amount);

/// <summary>An entry that may say what it took from the stock: it is then about those items too.</summary>
public interface ITakesStock
{
    Listed<Used> Used { get; }
}

/// <summary>What entries that take stock have in common.</summary>
internal static class TakingStock
{
    public static IEnumerable<Subject> Items(this ITakesStock entry) =>
        entry.Used.Select(used => Subject.Item(used.ItemId)).Distinct();

    public static IEnumerable<Objection> StockObjections(this ITakesStock entry, Floor before) =>
        entry
            .Used.GroupBy(used => used.ItemId, used => used.Amount)
            .SelectMany(lines => StockGuards.Taking(before.Item(lines.Key), [.. lines]));

    /// <summary>The item after all that the entry took of it, in however many lines.</summary>
    public static ItemState Taken(this ITakesStock entry, ItemState item) =>
        entry
            .Used.Where(used => used.ItemId == item.Id)
            .Aggregate(item, (left, used) => left.Without(used.Amount, (LogEntry)entry));
}
