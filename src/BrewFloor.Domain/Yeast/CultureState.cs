using BrewFloor.Brewing.Extract;
using BrewFloor.Domain.Log;
using UnitsNet;

namespace BrewFloor.Domain.Yeast;

/// <summary>A count under the microscope.</summary>
/// <param name="Viability">Living share, 0 to 1.</param>
/// <param name="CellsPerMilliliter">Of the culture itself, dilution reckoned in; null when not worked out.</param>
public readonly record struct Count(Moment Moment, double Viability, double? CellsPerMilliliter);

/// <summary>Taken from the culture for a batch.</summary>
public readonly record struct PitchedInto(Moment Moment, Guid BatchId, YeastAmount Amount);

/// <summary>The beer a slurry was harvested from, as it stood then.</summary>
public sealed record Source(
    Guid BatchId,
    Guid TankId,
    SpecificGravity? OriginalGravity,
    SpecificGravity? Gravity,
    bool IsHopped
);

/// <summary>What has become of a culture, as its log tells it: facts only. Viability and age are worked out when read.</summary>
public sealed record CultureState(Guid Id) : State(Id)
{
    public override Subject Subject => Subject.Culture(Id);

    /// <summary>Received, harvested, propagated or taken over.</summary>
    public Moment? Made { get; init; }

    /// <summary>What is left of it, by the books.</summary>
    public YeastAmount Amount { get; init; }

    /// <summary>How much there was when it was made, or taken over: what a measuring error is a share of.</summary>
    public YeastAmount AmountMade { get; init; }

    /// <summary>0 is fresh from the supplier.</summary>
    public int Generation { get; init; }

    /// <summary>Taken over: it may be older than that.</summary>
    public bool IsGenerationAtLeast { get; init; }

    public Listed<Guid> Parents { get; init; }

    public Source? From { get; init; }

    /// <summary>In °C, where it is kept.</summary>
    public Temperature? StoredAt { get; init; }

    public Listed<Count> Counts { get; init; }

    public Listed<PitchedInto> PitchedInto { get; init; }

    /// <summary>It is a mixed culture, or was in contact with one.</summary>
    public bool IsExposed { get; init; }

    public Moment? Discarded { get; init; }

    public bool IsUsable => Discarded is null && !Amount.IsNothing;

    protected override State Changed(LogEntry entry, Listed<HandedOver> handed) => entry.Change(this, handed);
}
