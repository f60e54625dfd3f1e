using BrewFloor.Domain.Items;
using BrewFloor.Domain.Log;
using UnitsNet;

namespace BrewFloor.Domain.Tests.Log;

/// <summary>Entries about the stock, and what other work takes from it.</summary>
internal static class RandomItems
{
    public static readonly Dictionary<string, Maker> Makers = new()
    {
        ["item-received"] = Received,
        ["item-counted"] = (r, floor) =>
            Kept(r, floor) is { } item ? new ItemCounted(item.Thing.Id, Some(r, item.Thing)) : null,
        ["item-used"] = (r, floor) =>
            Kept(r, floor) is { } item
                ? new ItemUsed(item.Thing.Id, Some(r, item.Thing)) { What = r.Chance(0.5) ? "Keg washing" : null }
                : null,
        ["item-discarded"] = (r, floor) =>
            Kept(r, floor) is { } item ? new ItemDiscarded(item.Thing.Id, Some(r, item.Thing), "Torn") : null,
    };

    /// <summary>What some work took; mostly nothing.</summary>
    public static Listed<Used> Taken(RandomFloor r, Floor floor) =>
        r.Chance(0.3) && Kept(r, floor) is { } item ? [new(item.Thing.Id, Some(r, item.Thing))] : [];

    private static (Item Thing, ItemState State)? Kept(RandomFloor r, Floor floor) =>
        floor.Items.Count is 0 ? null : r.OneOf<(Item, ItemState)>([.. floor.Items]);

    private static ItemReceived Received(RandomFloor r, Floor floor)
    {
        if (floor.Items.Count >= 4 && Kept(r, floor) is { } kept)
        {
            return new(kept.Thing.Id, Some(r, kept.Thing));
        }

        var id = r.NewId();
        NewItem brought = new(id, "Something", r.Any<ItemKind>(), r.Any<StockMeasure>());
        return new(id, Of(brought.Measure, r.Whole(1, 40))) { NewItem = brought };
    }

    // Now and then of another measure than the item's, and now and then nothing.
    private static StockAmount Some(RandomFloor r, Item item) =>
        Of(r.Chance(0.95) ? item.Measure : r.Any<StockMeasure>(), r.Whole(r.Chance(0.9) ? 1 : 0, 12));

    private static StockAmount Of(StockMeasure measure, int some) =>
        measure switch
        {
            StockMeasure.Pieces => StockAmount.Of(some),
            StockMeasure.Mass => StockAmount.Of(Mass.FromGrams(some * 100)),
            _ => StockAmount.Of(Volume.FromMilliliters(some * 100)),
        };
}
