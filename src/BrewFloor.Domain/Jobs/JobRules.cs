using BrewFloor.Domain.Batches;
using BrewFloor.Domain.House;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Domain.Yeast;

namespace BrewFloor.Domain.Jobs;

public delegate IEnumerable<Job> TankRule(Tank tank, TankState state, HouseRules rules, DateTimeOffset now);

public delegate IEnumerable<Job> BatchRule(Batch batch, BatchState state, HouseRules rules, DateTimeOffset now);

public delegate IEnumerable<Job> CultureRule(Culture culture, CultureState state, HouseRules rules, DateTimeOffset now);

/// <summary>All rules that make jobs. A rule reads one subject, so that whoever holds its lock may write its jobs.</summary>
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

    public static readonly Listed<BatchRule> OfBatches =
    [
        DumpTrub.For,
        DumpYeast.For,
        HarvestYeast.For,
        TakeGravity.For,
        AnswerForIt.For,
    ];

    public static readonly Listed<CultureRule> OfCultures =
    [
        CountCulture.For,
        UseOrDiscardCulture.For,
        AnswerForIt.For,
    ];

    /// <summary>Every job open on a subject, also those that come due later.</summary>
    public static Listed<Job> For(Floor floor, Subject subject, DateTimeOffset now) =>
        subject.Kind switch
        {
            SubjectKind.Tank => For(floor.Tank(subject.Id), floor.Rules, now),
            SubjectKind.Batch => For(floor.Batch(subject.Id), floor.Rules, now),
            SubjectKind.Culture => For(floor.Culture(subject.Id), floor.Rules, now),
            _ => [],
        };

    private static Listed<Job> For((Tank Thing, TankState State) tank, HouseRules rules, DateTimeOffset now) =>
        tank.Thing.IsRetired ? [] : [.. OfTanks.SelectMany(rule => rule(tank.Thing, tank.State, rules, now))];

    private static Listed<Job> For((Batch Thing, BatchState State) batch, HouseRules rules, DateTimeOffset now) =>
        [.. OfBatches.SelectMany(rule => rule(batch.Thing, batch.State, rules, now))];

    private static Listed<Job> For((Culture Thing, CultureState State) culture, HouseRules rules, DateTimeOffset now) =>
        [.. OfCultures.SelectMany(rule => rule(culture.Thing, culture.State, rules, now))];
}
