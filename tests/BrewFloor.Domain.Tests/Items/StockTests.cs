using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.House;
using BrewFloor.Domain.Items;
using BrewFloor.Domain.Jobs;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Domain.Tests.Tanks;
using UnitsNet;

namespace BrewFloor.Domain.Tests.Items;

public class StockTests
{
    private static readonly DateTimeOffset Monday = new(2026, 3, 2, 8, 0, 0, TimeSpan.Zero);

    private static readonly Item Acid = new(
        Guid.CreateVersion7(),
        1,
        "Peracetic acid",
        ItemKind.Chemical,
        StockMeasure.Volume
    )
    {
        ReorderAt = Ml(2000),
    };

    private static readonly Item Gaskets = new(
        Guid.CreateVersion7(),
        2,
        "Gasket 2 in",
        ItemKind.Part,
        StockMeasure.Pieces
    )
    {
        ReorderAt = StockAmount.Of(2),
    };

    private static readonly HouseRules Rules = HouseRules.Defaults(TimeZoneInfo.Utc);

    [Fact]
    public void A_delivery_adds_to_what_was_counted()
    {
        var floor = Shelf(new ItemCounted(Acid.Id, Ml(500)), new ItemReceived(Acid.Id, Ml(5000)));

        Assert.Equal(Ml(5500), floor.Item(Acid.Id).State.Amount);
    }

    [Fact]
    public void A_count_overrules_the_books()
    {
        var floor = Shelf(
            new ItemReceived(Gaskets.Id, StockAmount.Of(10)),
            new ItemCounted(Gaskets.Id, StockAmount.Of(7))
        );

        Assert.Equal(StockAmount.Of(7), floor.Item(Gaskets.Id).State.Amount);
        Assert.Equal(Monday.AddHours(1), floor.Item(Gaskets.Id).State.LastCounted?.At);
    }

    [Fact]
    public void Sanitizing_takes_what_it_says_from_the_stock()
    {
        var floor = Shelf(
            new ItemReceived(Acid.Id, Ml(5000)),
            new Sanitized(TankLogs.K3.Id, Agent.Peracetic, Way.Soak)
            {
                Used = [new(Acid.Id, Ml(150)), new(Acid.Id, Ml(50))],
            }
        );

        Assert.Equal(Ml(4800), floor.Item(Acid.Id).State.Amount);
    }

    [Fact]
    public void More_than_the_books_have_is_a_caution_and_leaves_nothing()
    {
        var floor = Shelf(new ItemReceived(Gaskets.Id, StockAmount.Of(1)));
        var used = At(2, new GasketChanged(TankLogs.K3.Id, "Lid seal") { Used = [new(Gaskets.Id, StockAmount.Of(3))] });

        var objection = Assert.Single(used.JudgedOn(floor).Objections, o => o.Code is "more-than-on-the-shelf");
        Assert.Equal(Level.Caution, objection.Level);
        Assert.Contains(new Number("left", StockAmount.Of(1)), objection.Numbers);
        Assert.Equal(StockAmount.Of(0), floor.After(used).Item(Gaskets.Id).State.Amount);
    }

    [Fact]
    public void Two_lines_of_one_item_are_taken_together()
    {
        var floor = Shelf(new ItemReceived(Acid.Id, Ml(100)));
        var used = At(
            2,
            new Sanitized(TankLogs.K3.Id, Agent.Peracetic, Way.Soak)
            {
                Used = [new(Acid.Id, Ml(60)), new(Acid.Id, Ml(60))],
            }
        );

        var objection = Assert.Single(used.JudgedOn(floor).Objections, o => o.Code is "more-than-on-the-shelf");
        Assert.Contains(new Number("amount", Ml(120)), objection.Numbers);
    }

    [Fact]
    public void What_was_never_counted_is_not_short() =>
        Assert.Empty(At(0, new ItemUsed(Acid.Id, Ml(100))).JudgedOn(Shelf()).Objections);

    [Fact]
    public void Grams_of_what_is_counted_in_pieces_are_impossible()
    {
        var entry = At(0, new ItemReceived(Gaskets.Id, StockAmount.Of(Mass.FromGrams(20))));

        var objection = Assert.Single(entry.JudgedOn(Shelf()).Objections);
        Assert.Equal(("other-measure", Level.Impossible), (objection.Code, objection.Level));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-3)]
    public void Nothing_and_less_than_nothing_cannot_be_received(int pieces) =>
        Assert.Equal(
            "no-amount",
            Assert.Single(At(0, new ItemReceived(Gaskets.Id, StockAmount.Of(pieces))).JudgedOn(Shelf()).Objections).Code
        );

    [Fact]
    public void An_empty_shelf_can_be_counted() =>
        Assert.Empty(At(0, new ItemCounted(Gaskets.Id, StockAmount.Of(0))).JudgedOn(Shelf()).Objections);

    [Fact]
    public void At_the_level_more_is_bought_and_the_job_stays_the_same_while_more_is_used()
    {
        var received = At(0, new ItemReceived(Gaskets.Id, StockAmount.Of(5)));
        var floor = Shelf().After(received);
        Assert.Empty(Due(floor, Gaskets));

        floor = floor.After(At(24, new ItemUsed(Gaskets.Id, StockAmount.Of(3))));
        var low = Assert.Single(Due(floor, Gaskets));
        Assert.Equal((BuyMore.Rule, received.Id, Monday.AddHours(24)), (low.Rule, low.Cause, low.DueAt));
        Assert.Equal(Monday.AddDays(15), low.OverdueAt);

        var still = Assert.Single(Due(floor.After(At(48, new ItemUsed(Gaskets.Id, StockAmount.Of(1)))), Gaskets));
        Assert.Equal(low.Cause, still.Cause);
    }

    [Fact]
    public void With_nothing_left_buying_more_is_overdue_at_once()
    {
        var floor = Shelf(new ItemReceived(Acid.Id, Ml(100)), new ItemUsed(Acid.Id, Ml(100)));

        Assert.Equal(Urgency.Overdue, Assert.Single(Due(floor, Acid)).At(Monday.AddHours(1)));
    }

    [Fact]
    public void A_delivery_above_the_level_closes_the_job()
    {
        var floor = Shelf(new ItemCounted(Acid.Id, Ml(500)), new ItemReceived(Acid.Id, Ml(5000)));

        Assert.Empty(Due(floor, Acid));
    }

    [Fact]
    public void Nothing_falls_due_on_what_is_no_longer_kept()
    {
        var gone = Acid with { IsNoLongerKept = true };
        var floor = Shelf(new ItemCounted(Acid.Id, Ml(0)));

        Assert.Empty(Due(floor with { Items = [(gone, floor.Item(Acid.Id).State)] }, gone));
    }

    [Fact]
    public void Amounts_of_different_measures_are_never_added_up() =>
        Assert.Throws<ArgumentException>(() => StockAmount.Of(3).And(Ml(100)));

    private static Listed<Job> Due(Floor floor, Item item) =>
        JobRules.For(floor, Subject.Item(item.Id), Monday.AddDays(1));

    private static Floor Shelf(params LogEntry[] log) =>
        log.Select((entry, hour) => At(hour, entry))
            .Aggregate(
                new Floor(Rules)
                {
                    Tanks = [(TankLogs.K3, new(TankLogs.K3.Id) { Closure = Closure.Vented })],
                    Items = [(Acid, new(Acid.Id)), (Gaskets, new(Gaskets.Id))],
                },
                (floor, entry) => floor.After(entry)
            );

    private static T At<T>(double hours, T entry)
        where T : LogEntry => entry with { Id = Guid.CreateVersion7(), At = Monday.AddHours(hours) };

    private static StockAmount Ml(double milliliters) => StockAmount.Of(Volume.FromMilliliters(milliliters));
}
