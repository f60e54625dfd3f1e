using BrewFloor.Brewing.Tanks;
using UnitsNet;

namespace BrewFloor.Domain.Tanks;

public enum TankType
{
    ConicalFermenter,
    PressureRatedConical,
    BrightTank,
    PlasticConical,
    Bucket,
}

public enum Material
{
    Stainless,
    Plastic,
    Glass,
}

/// <summary>Where a rating was read: nobody's memory is a source.</summary>
public enum RatingSource
{
    Plate,
    Manual,
}

public enum Cooling
{
    None,
    Jacket,
    Coil,
    Room,
}

public enum Heating
{
    None,
    Jacket,
    Belt,
    Room,
}

/// <summary>What a vessel may be put under, and where that was read.</summary>
/// <param name="Highest">In kPa gauge.</param>
public sealed record Rating(Pressure Highest, RatingSource Source);

/// <summary>The valve that opens before the vessel does.</summary>
/// <param name="Setting">In kPa gauge.</param>
/// <param name="TestedOn">The day of its last test as the inventory knows it; a later test in the log counts instead.</param>
public sealed record ReliefValve(Pressure Setting, DateOnly TestedOn);

/// <summary>What a tank is. Edited like any other thing, never changed by the log.</summary>
public sealed record Tank(Guid Id, string Code)
{
    private readonly double? _headspaceWanted;

    /// <summary>Raised by every edit; an entry by level keeps the version it was converted with.</summary>
    public int Version { get; init; } = 1;

    public string? Name { get; init; }

    public required TankType Type { get; init; }

    public required Material Material { get; init; }

    /// <summary>The hottest cleaning its weakest part stands, in °C.</summary>
    public required Temperature HighestCleaning { get; init; }

    /// <summary>Level to volume and back: from measured sizes, or from a dip table.</summary>
    public required IStrapping Strapping { get; init; }

    /// <summary>Up to where it is filled on an ordinary day, in L.</summary>
    public required Volume Working { get; init; }

    public Rating? Rating { get; init; }

    public ReliefValve? Relief { get; init; }

    public bool HasVacuumRelief { get; init; }

    public Cooling Cooling { get; init; }

    public Heating Heating { get; init; }

    /// <summary>A type whose lid is no seal: opening it spoils nothing that wasn't open already.</summary>
    public bool IsOpenType { get; init; }

    /// <summary>The share of the total volume that foam wants free; 0 to 0.5. Not said: 0.20 (CP: 15 to 25 %), none in a bright tank.</summary>
    public double HeadspaceWanted
    {
        get => _headspaceWanted ?? (Type is TankType.BrightTank ? 0 : 0.20);
        init => _headspaceWanted = value;
    }

    public DateOnly? OnLoanFrom { get; init; }

    public DateOnly? OnLoanUntil { get; init; }

    public DateOnly? RetiredOn { get; init; }

    /// <summary>Its ports by number; empty: nobody wrote them down. What is on them is in the log.</summary>
    public Listed<Port> Ports { get; init; }

    /// <summary>To the brim, in L.</summary>
    public Volume Total => Strapping.Total;

    /// <summary>Sediment gathers over the outlet and can be let out from under the beer.</summary>
    public bool HasCone =>
        Type is TankType.ConicalFermenter or TankType.PressureRatedConical or TankType.PlasticConical;

    public bool IsStainless => Material is Material.Stainless;

    public bool IsRetired => RetiredOn is not null;

    /// <summary>The lower of rating and relief valve setting, in kPa gauge; <see langword="null"/> without both.</summary>
    public Pressure? PressureLimit =>
        Rating is { } rating && Relief is { } relief
            ? Pressure.FromKilopascals(Math.Min(rating.Highest.Kilopascals, relief.Setting.Kilopascals))
            : null;

    /// <summary>A port by its number.</summary>
    public Port? Port(int number) => Ports.FirstOrDefault(port => port.Number == number);
}
