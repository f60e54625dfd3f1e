using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using static BrewFloor.Domain.Tests.Yeast.YeastLogs;

namespace BrewFloor.Domain.Tests.Log;

public class AllowedTests
{
    private static readonly Allowed Filling = new(K3.Id, "filled", ["not-sanitized"], Day(1.5), "steamed at noon");

    [Fact]
    public void What_a_brewer_allows_holds_for_the_next_entry_of_its_kind_and_no_further()
    {
        var tank = new TankState(K3.Id).After(On(1, Filling));
        var opened = On(1.1, new Opened(K3.Id));
        var filled = On(1.2, new Filled(K3.Id, Batch118.Id, Litres(90)));

        Assert.Equal(Day(1.5), Assert.Single(tank.Allowances).Until);
        Assert.Single(tank.After(opened).Allowances); // another kind doesn't use it up
        Assert.Empty(tank.After(filled).Allowances);
    }

    [Theory]
    [InlineData(1.5, 1)] // the last moment counts
    [InlineData(1.51, 0)]
    public void It_holds_until_its_hour(double day, int used) =>
        Assert.Equal(
            used,
            On(day, new Filled(K3.Id, Batch118.Id, Litres(90)))
                .JudgedOn(TheFloor((TankState)new TankState(K3.Id).After(On(1, Filling))))
                .Allowed.Count
        );

    [Fact]
    public void What_is_allowed_for_one_batch_lets_no_other_in()
    {
        var other = Filling with { BatchId = Guid.CreateVersion7() };

        Assert.False(
            On(1.2, new Filled(K3.Id, Batch118.Id, Litres(90)))
                .Uses(Assert.Single(new TankState(K3.Id).After(On(1, other)).Allowances))
        );
    }

    [Fact]
    public void Nothing_is_wrong_with_allowing_a_stop_for_a_day() =>
        Assert.Empty(On(1, Filling with { Until = Day(2) }).JudgedOn(TheFloor()).Objections);

    [Theory]
    [InlineData(1)] // it would end as it begins
    [InlineData(2.001)] // longer than a day
    public void It_is_allowed_for_a_day_at_most(double until) =>
        Assert.Equal(["allowed-too-long"], On(1, Filling with { Until = Day(until) }).JudgedOn(TheFloor()).Codes());

    [Theory]
    [InlineData("vent-closed")] // a stop!: it can hurt someone
    [InlineData("tank-occupied")] // impossible
    [InlineData("over-working")] // a caution: a reason does for it
    [InlineData("no-such-code")]
    public void Only_a_stop_can_be_allowed(string code) =>
        Assert.Equal(["not-a-stop"], On(1, Filling with { Codes = [code] }).JudgedOn(TheFloor()).Codes());

    [Fact]
    public void A_kind_that_does_not_exist_is_refused() =>
        Assert.Equal(["unknown-kind"], On(1, Filling with { EntryKind = "krausened" }).JudgedOn(TheFloor()).Codes());

    [Fact]
    public void Nothing_is_allowed_without_a_reason() =>
        Assert.Equal(["no-reason"], On(1, Filling with { Reason = " " }).JudgedOn(TheFloor()).Codes());

    [Fact]
    public void What_is_allowed_no_longer_stands_in_the_way_and_what_is_not_does()
    {
        var floor = TheFloor((TankState)new TankState(K3.Id).After(On(1, Filling)));
        var verdict = On(1.2, new Filled(K3.Id, Batch118.Id, Litres(90))).JudgedOn(floor);

        Assert.Contains(verdict.Objections, o => o.Code is "not-sanitized");
        Assert.DoesNotContain(verdict.Standing, o => o.Code is "not-sanitized");
        Assert.Equal(verdict.Objections.Count - 1, verdict.Standing.Count());
        Assert.DoesNotContain("not-sanitized", Stops.Allowable(verdict));
    }
}
