using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Log;
using UnitsNet;

namespace BrewFloor.Domain.Tanks;

/// <summary>How a tank is shut.</summary>
public enum Closure
{
    Open, // lid off, manway or a port open
    Vented, // lid on, air or blow-off line open
    Closed, // no way out, no pressure
    Sealed, // no way out, under CO2 pressure
}

/// <summary>What stands over the beer or in the empty tank. Unknown counts as CO2.</summary>
public enum Gas
{
    Unknown,
    Air,
    CarbonDioxide,
}

/// <summary>What is in a tank.</summary>
public enum Holding
{
    Nothing,
    Beer,
    Water,
    Cleaner,
    Sanitizer,
    Bath, // of a passivation
    Unknown,
}

/// <summary>The contents: for beer the batch and the litres (<see langword="null"/>: not known), for a liquid of cleaning its agent.</summary>
public sealed record Contents(Holding What, Moment Since)
{
    public static readonly Contents Nothing = new(Holding.Nothing, default);

    public Guid? BatchId { get; init; }

    /// <summary>In L; <see langword="null"/> when nobody knows.</summary>
    public Volume? Volume { get; init; }

    public Agent? Agent { get; init; }

    /// <summary>The label's own least contact of that agent, in minutes.</summary>
    public Duration? LabelMinutes { get; init; }
}

/// <summary>From when a closure held; the next one ends it.</summary>
public readonly record struct Stretch(Closure Closure, Gas Gas, DateTimeOffset From);

/// <summary>How long it stood shut in each way, summed up: what older stretches come to.</summary>
public readonly record struct StoodShut(TimeSpan Open, TimeSpan Closed, TimeSpan Sealed);

/// <summary>Pressures above the step below it, up to this one (kPa gauge), have held since this moment.</summary>
public readonly record struct PressureStep(Pressure Pressure, Moment Since);

/// <summary>A measured value and when it was read.</summary>
public readonly record struct Measured<T>(T Value, Moment Moment);

/// <summary>A fill that is planned for a tank.</summary>
public sealed record PlannedFill(Guid BatchId, DateTimeOffset At, Volume Volume, Moment Moment);

/// <summary>Where a tank is now, as its log tells it: facts only. Ages, lapses and dates due are worked out when read.</summary>
public sealed record TankState(Guid Id) : State(Id)
{
    public override Subject Subject => Subject.Tank(Id);

    public Contents Contents { get; init; } = Contents.Nothing;

    /// <summary>What was left behind at the last emptying, in L.</summary>
    public Volume? Heel { get; init; }

    public PlannedFill? Planned { get; init; }

    // How it is shut, and under what.

    public Closure Closure { get; init; }

    public Gas Gas { get; init; } = Gas.Air;

    /// <summary>The closures since the sanitizer was drained; empty when nothing is counted.</summary>
    public Listed<Stretch> StretchesSinceDrained { get; init; }

    /// <summary>Stretches since draining that are too old to be kept one by one.</summary>
    public StoodShut StoodSinceDrained { get; init; }

    /// <summary>The first opening since the sanitizer was drained.</summary>
    public Moment? OpenedSinceDrained { get; init; }

    /// <summary>The last pressure known, kPa gauge: a reading, or 0 when it was vented or opened. Null: unknown.</summary>
    public Measured<Pressure>? Pressure { get; init; }

    /// <summary>It was closed, sealed or warmed since the pressure was last known.</summary>
    public bool IsPressureInDoubt { get; init; }

    /// <summary>Rising steps up to the last pressure: since when it has been above any limit. Empty at none.</summary>
    public Listed<PressureStep> PressureSteps { get; init; }

    public Measured<Temperature>? Temperature { get; init; }

    public Measured<Pressure>? PressureSet { get; init; }

    public Measured<Temperature>? TemperatureSet { get; init; }

    // Soil.

    /// <summary>The facts; whether a sanitizing has lapsed is worked out by <c>Sanitizing</c>.</summary>
    public Soil Soil { get; init; }

    public Moment SoilSince { get; init; }

    /// <summary>It was soiled and only rinsed since: when it was soiled.</summary>
    public Moment? SoiledBeforeRinse { get; init; }

    /// <summary>The last wash, until soil voids it.</summary>
    public Moment? Washed { get; init; }

    /// <summary>Rinsed after that wash: a wash counts only when its cleaner is out.</summary>
    public Moment? RinsedAfterWash { get; init; }

    /// <summary>The last chemical on the walls, until rinsed.</summary>
    public Agent? ChemicalOnWalls { get; init; }

    /// <summary>The last hot step, until it was aired, read cold or cooled by a cold liquid.</summary>
    public Moment? Hot { get; init; }

    public Moment? SanitizerIn { get; init; }

    /// <summary>When the sanitizer left; null once it is void.</summary>
    public Moment? Sanitized { get; init; }

    // Steel.

    /// <summary>A bath was given that hasn't dried yet.</summary>
    public BathGiven? Bath { get; init; }

    /// <summary>When the film was made: the air-drying after a bath.</summary>
    public Moment? Dried { get; init; }

    /// <summary>The bath that made the film.</summary>
    public BathKind? DriedAfter { get; init; }

    /// <summary>Times, not a count: which of them matter is a house rule, and folds read none.</summary>
    public Listed<DateTimeOffset> FilledSinceDried { get; init; }

    /// <summary>What hurt the film since it was made.</summary>
    public Listed<FilmHurt> FilmHurt { get; init; }

    /// <summary>Taken over, and nobody knew when it was last passivated.</summary>
    public Moment? PassivationUnknown { get; init; }

    // Exposure, parts, tests.

    public Listed<Exposure> ExposedTo { get; init; }

    /// <summary>What is on the ports, as far as anybody wrote it down, by port.</summary>
    public Listed<Fitting> Fitted { get; init; }

    /// <summary>What came off its port and is not on again.</summary>
    public Listed<Fitting> LyingAbout { get; init; }

    public Moment? PartsOff { get; init; }

    /// <summary>Refitted and not leak-tested since.</summary>
    public Moment? Refitted { get; init; }

    public Moment? LeakTested { get; init; }

    /// <summary>The last leak test failed.</summary>
    public bool Leaks { get; init; }

    public Moment? GasketChanged { get; init; }

    /// <summary>The last test, passed or not.</summary>
    public Moment? ReliefTested { get; init; }

    /// <summary>The last relief valve test failed.</summary>
    public bool ReliefFailed { get; init; }

    /// <summary>The last test, passed or not.</summary>
    public Moment? PressureTested { get; init; }

    public bool PressureTestFailed { get; init; }

    public Moment? ProbeCalibrated { get; init; }

    // Service and times.

    /// <summary>The first line of its log.</summary>
    public Moment? Begun { get; init; }

    public OutOfServiceSince? OutOfService { get; init; }

    public Moment? LastFilled { get; init; }

    public Moment? LastEmptied { get; init; }

    public Guid? BatchId => Contents.BatchId;

    public bool HoldsBeer => Contents.What is Holding.Beer;

    /// <summary>No way out for gas.</summary>
    public bool IsShut => Closure is Closure.Closed or Closure.Sealed;

    protected override State Changed(LogEntry entry, Listed<HandedOver> handed) =>
        entry.Change(Begun is null ? this with { Begun = Moment.Of(entry) } : this, handed);
}

/// <summary>Out of service, since when and why.</summary>
public sealed record OutOfServiceSince(Moment Moment, string Why);
