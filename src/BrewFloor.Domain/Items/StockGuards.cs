using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Items;

/// <summary>What the floor says to amounts of an item.</summary>
internal static class StockGuards
{
    /// <summary>Impossible: pieces of what is weighed, and less than nothing.</summary>
    /// <param name="measure">What the item is counted in.</param>
    /// <param name="mayBeNothing">An empty shelf can be counted, not received or used.</param>
    public static IEnumerable<Objection> Unreadable(
        string item,
        StockMeasure measure,
        StockAmount amount,
        bool mayBeNothing
    )
    {
        if (amount.Measure != measure)
        {
            yield return Objection.Impossible(
                "other-measure",
                new("item", item),
                new("amount", amount),
                new("measure", measure.Unit())
            );
        }
        else if (!double.IsFinite(amount.Value) || amount.Value < 0 || (amount.IsNothing && !mayBeNothing))
        {
            yield return Objection.Impossible("no-amount", new("item", item), new("amount", amount));
        }
    }

    /// <summary>Taking some: it must be of the item's measure; more than the books have is a caution, for shelves are miscounted.</summary>
    /// <param name="lines">One at least; together they are what is taken.</param>
    public static IEnumerable<Objection> Taking((Item Thing, ItemState State) item, params StockAmount[] lines)
    {
        Objection[] unreadable =
        [
            .. lines.SelectMany(line => Unreadable(item.Thing.Name, item.Thing.Measure, line, mayBeNothing: false)),
        ];
        if (unreadable is [_, ..])
        {
            return unreadable;
        }

        var taken = lines.Aggregate((sum, line) => sum.And(line));
        return item.State.Amount is { } left && left.Measure == taken.Measure && taken.IsMoreThan(left)
            ?
            [
                Objection.Caution(
                    "more-than-on-the-shelf",
                    new("item", item.Thing.Name),
                    new("amount", taken),
                    new("left", left)
                ),
            ]
            : [];
    }
}
