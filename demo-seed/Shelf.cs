using BrewFloor.Domain;
using BrewFloor.Domain.Items;
using BrewFloor.Domain.Log;
using UnitsNet;

namespace BrewFloor.DemoSeed;

/// <summary>One kind of thing on the shelf: what is there on the first day, and how much comes with a delivery.</summary>
internal sealed record Kept(NewItem Item, StockAmount AtFirst, StockAmount Delivery);

/// <summary>The stock of the club, kept for a little more than a year: counted once, taken from, and delivered when it runs low.</summary>
internal sealed class Shelf
{
    private const int First = -380;
    private const int DeliveryDays = 2;
    private const int KegWashDays = 28;

    private readonly Story _story;

    public Shelf(Story story)
    {
        _story = story;
        Caustic = Of("Caustic cleaner", ItemKind.Chemical, Kilograms(12), Kilograms(6), Kilograms(25));
        Peracetic = Of("Peracetic acid, 5 %", ItemKind.Chemical, Litres(6), Litres(2), Litres(10));
        Citric = Of("Citric acid", ItemKind.Chemical, Kilograms(9), Kilograms(3), Kilograms(10));
        Gaskets = Of("Clamp gasket, 50.5 mm", ItemKind.Part, StockAmount.Of(14), StockAmount.Of(6), StockAmount.Of(20));
        Clamps = Of("Clamp, 50.5 mm", ItemKind.Part, StockAmount.Of(5), StockAmount.Of(2), StockAmount.Of(6));
        Gas = Of("Carbon dioxide", ItemKind.Gas, Kilograms(22), Kilograms(8), Kilograms(30));
    }

    public Kept Caustic { get; }

    public Kept Peracetic { get; }

    public Kept Citric { get; }

    public Kept Gaskets { get; }

    public Kept Clamps { get; }

    public Kept Gas { get; }

    private Kept[] All => [Caustic, Peracetic, Citric, Gaskets, Clamps, Gas];

    public static StockAmount Grams(double grams) => StockAmount.Of(Mass.FromGrams(Math.Round(grams)));

    public static StockAmount Milliliters(double some) => StockAmount.Of(Volume.FromMilliliters(Math.Round(some)));

    /// <summary>What some work takes; nothing before the shelf was in the books.</summary>
    public Listed<Used> Taken(DateTimeOffset at, Kept kept, StockAmount amount) =>
        at < _story.Calendar.At(First + 1, 0) ? [] : [new(kept.Item.Id, amount)];

    /// <summary>What isn't said with some work in a tank: the count at first, kegs washed, gas drawn, a few gaskets thrown away.</summary>
    public void Keep()
    {
        var count = _story.At("shelf", First, 18, 0, _story.Crew.Torvin);
        foreach (var kept in All)
        {
            count.Do(new ItemCounted(kept.Item.Id, kept.AtFirst) { NewItem = kept.Item });
        }

        for (var day = First + 9; day < 0; day += KegWashDays)
        {
            _story
                .At("kegs", day, 15, 0, _story.Crew.Helps(day))
                .Do(new ItemUsed(Caustic.Item.Id, Grams(350)) { What = "Keg washing" })
                .Do(new ItemUsed(Gas.Item.Id, Grams(2400)) { What = "Serving and purging" });
        }

        _story
            .At("gaskets", -205, 11, 0, _story.Crew.Elka)
            .Do(new ItemDiscarded(Gaskets.Item.Id, StockAmount.Of(3), "Flattened"));
        _story
            .At("clamps", -1, 16, 0, _story.Crew.Rasco)
            .Do(new ItemUsed(Clamps.Item.Id, StockAmount.Of(3)) { What = "Hoses of the new pump" });
    }

    /// <summary>Told last: more comes two days after an item ran low, in the order in which all of it happened.</summary>
    public void Deliver()
    {
        LogEntry[] told = [.. _story.Told.OrderBy(entry => entry.At)];
        foreach (var kept in All)
        {
            var left = kept.AtFirst;
            foreach (var entry in told)
            {
                left = TakenBy(entry, kept.Item.Id).Aggregate(left, (rest, taken) => rest.Less(taken));
                if (!left.IsMoreThan(kept.Item.ReorderAt!.Value))
                {
                    _story.Write(
                        new ItemReceived(kept.Item.Id, kept.Delivery),
                        entry.At.AddDays(DeliveryDays).AddMinutes(7),
                        _story.Crew.Torvin
                    );
                    left = left.And(kept.Delivery);
                }
            }
        }
    }

    private static IEnumerable<StockAmount> TakenBy(LogEntry entry, Guid item) =>
        entry switch
        {
            ITakesStock taking => taking.Used.Where(used => used.ItemId == item).Select(used => used.Amount),
            ItemUsed used when used.ItemId == item => [used.Amount],
            ItemDiscarded gone when gone.ItemId == item => [gone.Amount],
            _ => [],
        };

    private Kept Of(string name, ItemKind kind, StockAmount atFirst, StockAmount low, StockAmount delivery) =>
        new(
            new(_story.Dice.Id($"item {name}"), name, kind, atFirst.Measure)
            {
                ReorderAt = low,
                KeptWhere = kind is ItemKind.Part ? "Drawer under the bench" : "Cage by the back door",
            },
            atFirst,
            delivery
        );

    private static StockAmount Kilograms(double kilograms) => StockAmount.Of(Mass.FromKilograms(kilograms));

    private static StockAmount Litres(double litres) => StockAmount.Of(Volume.FromLiters(litres));
}
