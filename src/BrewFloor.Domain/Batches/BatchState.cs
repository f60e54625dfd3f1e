using BrewFloor.Brewing.Extract;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Yeast;
using UnitsNet;

namespace BrewFloor.Domain.Batches;

/// <summary>What settles in the cone.</summary>
public enum Sediment
{
    Trub,
    Yeast,
    Hops,
}

/// <summary>Beer of a batch in one tank, in L as booked (null: nobody knows), and the entry that brought it.</summary>
public readonly record struct InTank(Guid TankId, Volume? Volume, Moment Since)
{
    /// <summary>In L, all that came into the tank: what a measuring error is a share of.</summary>
    public Volume CameIn { get; init; } = Litres.None;

    /// <summary>It came as wort from the kettle, trub and all, not racked off another tank.</summary>
    public bool IsWort { get; init; }

    /// <summary>In L, what went out above what was booked, since a level was last measured.</summary>
    public Volume Over { get; init; } = Litres.None;

    /// <summary>When a reading first was at or below a cold set point (6 °C at most) + 1 K, since it was last warmer.</summary>
    public Moment? Cold { get; init; }

    /// <summary>When its way out was shut, or its valve set, so that it keeps the gas it makes.</summary>
    public Moment? ShutIn { get; init; }
}

/// <summary>Sums of where the litres of a batch came from and went, in L.</summary>
/// <remarks>
/// What was filled in is in tanks, packaged, discarded, dumped, harvested, left or a measuring difference; a test proves it
/// on random logs. Beer whose volume nobody knows counts from when it is measured or comes out.
/// </remarks>
public sealed record Litres
{
    public static readonly Volume None = Volume.FromLiters(0);

    public Volume FilledIn { get; init; } = None;

    public Volume Packaged { get; init; } = None;

    public Volume Discarded { get; init; } = None;

    public Volume Dumped { get; init; } = None;

    public Volume Harvested { get; init; } = None;

    /// <summary>Left behind in tanks: heels, and what a racking left.</summary>
    public Volume Left { get; init; } = None;

    /// <summary>Booked by measuring a level; negative when there was more than booked.</summary>
    public Volume MeasuringDifference { get; init; } = None;
}

/// <summary>A gravity corrected to 20 °C.</summary>
public readonly record struct GravityFact(Moment Moment, Guid TankId, SpecificGravity Gravity)
{
    public Instrument Instrument { get; init; }
}

public readonly record struct TemperatureFact(DateTimeOffset At, Temperature Temperature);

/// <summary>Yeast that went in. Null <see cref="CultureId"/>: not a culture of this house, and its generation is not known.</summary>
public readonly record struct Pitch(Moment Moment, Guid? CultureId, YeastAmount Amount, int Generation, bool IsAtLeast);

public readonly record struct Dump(Moment Moment, Guid TankId, Sediment What, Volume Volume);

/// <summary>Hops in the beer; null <see cref="OutAt"/>: still in.</summary>
public readonly record struct DryHop(Moment Moment, Guid TankId, string Material, Mass Mass, DateTimeOffset? OutAt);

/// <summary>What has become of a batch, as its log tells it: facts only. Its stage is worked out by <c>Stages</c>.</summary>
public sealed record BatchState(Guid Id) : State(Id)
{
    public override Subject Subject => Subject.Batch(Id);

    public Moment? Planned { get; init; }

    /// <summary>For when, by the last plan.</summary>
    public DateTimeOffset? PlannedAt { get; init; }

    /// <summary>The first wort in a tank.</summary>
    public Moment? Filled { get; init; }

    /// <summary>Filled is older than the log knows.</summary>
    public bool IsTakenOver { get; init; }

    public Listed<InTank> InTanks { get; init; }

    public Litres Litres { get; init; } = new();

    public SpecificGravity? OriginalGravity { get; init; }

    /// <summary>In time order, corrected to 20 °C; 200 at most: the latest hundred, and before them fewer and fewer.</summary>
    public Listed<GravityFact> Gravities { get; init; }

    /// <summary>Only those that no later one reaches, each lower than the one before: enough to say the highest since any moment.</summary>
    public Listed<TemperatureFact> TemperaturePeaks { get; init; }

    public LastTemperature? LastTemperature { get; init; }

    /// <summary>When the last of its tanks became cold; null while one of them isn't.</summary>
    public Moment? Cold =>
        InTanks.Count > 0 && InTanks.All(beer => beer.Cold is not null)
            ? InTanks.Select(beer => beer.Cold!.Value).MaxBy(cold => cold.At)
            : null;

    public Listed<Pitch> Pitches { get; init; }

    public Listed<Dump> Dumps { get; init; }

    public Listed<DryHop> DryHops { get; init; }

    public Listed<Moment> Harvests { get; init; }

    public Listed<string> Allergens { get; init; }

    /// <summary>A mixed culture was pitched, or it came from a tank that was exposed to one.</summary>
    public bool HasMixedCulture { get; init; }

    /// <summary>The last packaging.</summary>
    public Moment? Packaged { get; init; }

    /// <summary>The last time a tank was emptied by pouring it away.</summary>
    public Moment? Discarded { get; init; }

    /// <summary>When the last tank was emptied of it: the account is closed.</summary>
    public Moment? Closed { get; init; }

    protected override State Changed(LogEntry entry, Listed<HandedOver> handed) => entry.Change(this, handed);
}

/// <summary>The last temperature of the beer and the set point that held then.</summary>
public sealed record LastTemperature(TemperatureFact Read, Temperature? SetPoint);
