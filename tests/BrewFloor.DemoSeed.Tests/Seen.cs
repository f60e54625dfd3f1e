using System.Collections.Concurrent;
using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.House;
using BrewFloor.Domain.Jobs;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;

namespace BrewFloor.DemoSeed.Tests;

/// <summary>The floor of the scenario as somebody sees it at a moment.</summary>
internal sealed record Seen(Floor Floor, DateTimeOffset Now)
{
    private static readonly ConcurrentDictionary<(string Day, string Zone), Lazy<Played>> Days = new();

    public HouseRules Rules => Floor.Rules;

    public DateOnly Today => Rules.DateOf(Now);

    /// <summary>A day to its end. A later hour only adds to the log, so that it serves them all.</summary>
    public static Played Whole(string day, TimeZoneInfo zone) =>
        Days.GetOrAdd(
            (day, zone.Id),
            _ => new(() => new(DemoScenario.For(Moments.Of(day, zone).Last(), zone), zone))
        ).Value;

    /// <summary>At several hours of a day.</summary>
    public static IEnumerable<Seen> On(string day, TimeZoneInfo zone) =>
        Moments.Of(day, zone).Select(now => new Seen(Whole(day, zone).At(now), now));

    public (Batch Thing, BatchState State) BeerIn(string code) => Floor.Batch(TankOf(code).State.BatchId!.Value);

    public Soil SoilOf(string code)
    {
        var (tank, state) = TankOf(code);
        return Sanitizing.SoilNow(tank, state, Rules, Now);
    }

    /// <summary>How pressing the one job of a rule is, on a tank or on the beer in it.</summary>
    public Urgency JobOn(string code, string rule)
    {
        var state = TankOf(code).State;
        Subject[] subjects = state.BatchId is { } batch ? [state.Subject, Subject.Batch(batch)] : [state.Subject];
        return Assert.Single(subjects.SelectMany(subject => Jobs(subject, rule)));
    }

    public IEnumerable<Urgency> Jobs(Subject subject, string rule) =>
        JobRules
            .For(Floor, subject, Now)
            .Where(job => job.Rule.Equals(rule, StringComparison.Ordinal))
            .Select(job => job.At(Now));

    public IEnumerable<string> TanksWith(string rule, Urgency urgency) =>
        Floor.Tanks.Where(t => Jobs(t.State.Subject, rule).Contains(urgency)).Select(t => t.Thing.Code);

    private (Tank Thing, TankState State) TankOf(string code) =>
        Floor.Tanks.Single(tank => tank.Thing.Code.Equals(code, StringComparison.Ordinal));
}
