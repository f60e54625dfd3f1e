using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Cleaning;

/// <summary>What may be filled and what not.</summary>
public enum Soil
{
    Unknown,
    InUse,
    Soiled,
    Rinsed,
    Clean,
    Sanitized,
}

/// <summary>A passivating bath. Only the first two follow a published practice; the third is never called so.</summary>
public enum BathKind
{
    Nitric,
    Citric,
    AcidSoak,
}

/// <summary>A bath that hasn't dried yet; liquid before the drying voids it, but the practice's own water rinse.</summary>
public sealed record BathGiven(Moment Moment, BathKind Kind, bool IsRinsed);

/// <summary>What hurts the film that keeps stainless stainless.</summary>
public enum Trigger
{
    Chloride,
    Rust,
    Scratch,
    Weld,
}

public sealed record FilmHurt(Moment Moment, Trigger By)
{
    /// <summary>Its name in the wording.</summary>
    public string Word => By.ToString().ToLowerInvariant();
}

/// <summary>What stays behind in soft parts.</summary>
public enum ExposureKind
{
    MixedCulture,
    Allergen,
}

/// <summary>What a tank was exposed to, and what was done since to clear it.</summary>
public sealed record Exposure(Moment Moment, ExposureKind Kind, string What)
{
    /// <summary>The beer that brought it, when it came with beer.</summary>
    public Guid? BatchId { get; init; }

    public bool SoftPartsRenewed { get; init; }

    /// <summary>Washes rinsed out since.</summary>
    public int Washes { get; init; }

    public bool Inspected { get; init; }

    /// <summary>Steel is clear of it: soft parts renewed, washed twice, inspected (common practice, no source).</summary>
    public bool IsCleared => SoftPartsRenewed && Washes >= 2 && Inspected;
}
