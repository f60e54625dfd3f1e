using BrewFloor.Domain.Batches;
using BrewFloor.Domain.House;
using BrewFloor.Domain.Items;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Domain.Yeast;

namespace BrewFloor.Domain.Jobs;

public delegate IEnumerable<Job> TankRule(Tank tank, TankState state, HouseRules rules, DateTimeOffset now);

public delegate IEnumerable<Job> BatchRule(Batch batch, BatchState state, HouseRules rules, DateTimeOffset now);

public delegate IEnumerable<Job> BeerRule(
    Batch batch,
    BatchState state,
    InTank beer,
    Tank tank,
    HouseRules rules,
    DateTimeOffset now
);

public delegate IEnumerable<Job> CultureRule(Culture culture, CultureState state, HouseRules rules, DateTimeOffset now);

public delegate IEnumerable<Job> ItemRule(Item item, ItemState state, HouseRules rules, DateTimeOffset now);

/// <summary>
/// All rules that make jobs. A rule reads the state of one subject, so that whoever holds its lock may write its jobs; what the
/// tanks are that a batch lies in is known beside it.
/// </summary>
public static class JobRules
{
    public static readonly Listed<TankRule> OfTanks =
    [
        LowerPressure.For,
        DrainSanitizer.For,
        RecordAirDrying.For,
        WashSoiledTank.For,
        Repassivate.For,
        TestReliefValve.For,
        AnswerForIt.For,
    ];

    /// <summary>About what settles in a cone: nothing can be let out of a tank without one.</summary>
    public static readonly Listed<BatchRule> OfCones = [DumpTrub.For, DumpYeast.For];

    public static readonly Listed<BatchRule> OfBatches = [HarvestYeast.For, TakeGravity.For, AnswerForIt.For];

    /// <summary>About the beer in one tank, and what that tank bears.</summary>
    public static readonly Listed<BeerRule> OfBeer = [CloseValve.For];

    public static readonly Listed<CultureRule> OfCultures =
    [
        CountCulture.For,
        UseOrDiscardCulture.For,
        AnswerForIt.For,
    ];

    public static readonly Listed<ItemRule> OfItems = [BuyMore.For];

    /// <summary>Every job open on a subject, also those that come due later.</summary>
    /// <param name="floor">With the subject; with a batch, the tanks it lies in.</param>
    public static Listed<Job> For(Floor floor, Subject subject, DateTimeOffset now) =>
        subject.Kind switch
        {
            SubjectKind.Tank => For(floor.Tank(subject.Id), floor.Rules, now),
            SubjectKind.Batch => For(floor.Batch(subject.Id), floor, now),
            SubjectKind.Culture => For(floor.Culture(subject.Id), floor.Rules, now),
            SubjectKind.Item => For(floor.Item(subject.Id), floor.Rules, now),
            _ => throw new ArgumentOutOfRangeException(nameof(subject), subject, "No such kind."),
        };

    private static Listed<Job> For((Tank Thing, TankState State) tank, HouseRules rules, DateTimeOffset now) =>
        tank.Thing.IsRetired ? [] : [.. OfTanks.SelectMany(rule => rule(tank.Thing, tank.State, rules, now))];

    private static Listed<Job> For((Batch Thing, BatchState State) batch, Floor floor, DateTimeOffset now) =>
        [
            .. OfCones
                .SelectMany(rule => rule(batch.Thing, batch.State, floor.Rules, now))
                .Where(job => floor.Tank(job.TankId!.Value).Thing.HasCone),
            .. OfBatches.SelectMany(rule => rule(batch.Thing, batch.State, floor.Rules, now)),
            .. batch.State.InTanks.SelectMany(beer => OfOne(beer, batch, floor, now)),
        ];

    private static IEnumerable<Job> OfOne(
        InTank beer,
        (Batch Thing, BatchState State) batch,
        Floor floor,
        DateTimeOffset now
    )
    {
        var tank = floor.Tank(beer.TankId).Thing;
        return OfBeer.SelectMany(rule => rule(batch.Thing, batch.State, beer, tank, floor.Rules, now));
    }

    private static Listed<Job> For((Culture Thing, CultureState State) culture, HouseRules rules, DateTimeOffset now) =>
        [.. OfCultures.SelectMany(rule => rule(culture.Thing, culture.State, rules, now))];

    private static Listed<Job> For((Item Thing, ItemState State) item, HouseRules rules, DateTimeOffset now) =>
        item.Thing.IsNoLongerKept ? [] : [.. OfItems.SelectMany(rule => rule(item.Thing, item.State, rules, now))];
}
