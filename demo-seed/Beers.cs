using BrewFloor.Brewing.Extract;
using BrewFloor.Domain.Batches;

namespace BrewFloor.DemoSeed;

/// <summary>A beer of the club, invented, and how it ferments.</summary>
/// <param name="Original">Extract of the wort, in °P.</param>
/// <param name="Final">Apparent extract at the end, in °P.</param>
/// <param name="ColourEbc">In EBC units.</param>
internal sealed record Beer(string Name, string Style, double Original, double Final, double ColourEbc)
{
    public BeerKind Kind { get; init; } = BeerKind.Ale;

    /// <summary>The set point while it ferments, in °C.</summary>
    public double Degrees { get; init; } = 19;

    /// <summary>When half of the extract is gone, in hours after pitching.</summary>
    public double Half { get; init; } = 40;

    /// <summary>How steeply it falls then, per hour.</summary>
    public double Steepness { get; init; } = 0.115;

    /// <summary>The day after brewing on which the second of two equal gravities is read.</summary>
    public int FinishedOn { get; init; } = 6;

    /// <summary>The day it goes over to the bright tank.</summary>
    public int RackedOn { get; init; } = 12;

    public string? Allergen { get; init; }

    public bool IsDryHopped { get; init; }

    public bool IsMixed { get; init; }

    /// <summary>As the density meter shows it: apparent extract in tenths of a °P.</summary>
    /// <remarks>A logistic curve from the original to the final extract.</remarks>
    public double ReadAfter(TimeSpan pitched)
    {
        var left = Curve(pitched.TotalHours) / Curve(0);
        return Math.Round(Final + ((Original - Final) * left), 1);
    }

    /// <summary>A tenth above the end, as the strain's history has it.</summary>
    public SpecificGravity Limit => new DegreesPlato(Final + 0.1).ToGravity().Value;

    public SpecificGravity Wort => new DegreesPlato(Original).ToGravity().Value;

    private double Curve(double hours) => 1 / (1 + Math.Exp(Steepness * (hours - Half)));

    public static readonly Beer LanternTax = new("Lantern Tax", "Pale ale", 11.4, 2.4, 14);

    public static readonly Beer FerryBell = new("Ferry Bell", "Bitter", 10.2, 2.6, 24);

    public static readonly Beer SecondSluice = new("Second Sluice", "Amber ale", 12.6, 3.1, 32);

    public static readonly Beer GorseLine = new("Gorse Line", "Dry-hopped pale ale", 12.8, 2.4, 10)
    {
        IsDryHopped = true,
        RackedOn = 15,
    };

    public static readonly Beer CoalHeron = new("Coal Heron", "Sweet stout", 14.8, 4.8, 92) { Allergen = "milk" };

    public static readonly Beer MossParish = new("Moss Parish", "Mixed-culture ale", 11.8, 1.4, 9)
    {
        IsMixed = true,
        Degrees = 21,
        Half = 90,
        Steepness = 0.045,
        FinishedOn = 12,
    };

    public static readonly Beer BucketLetter = new("Bucket Letter", "Pilot brew", 11.8, 2.6, 18) { Degrees = 20 };

    public static readonly Beer SlowTram = new("Slow Tram", "Pale lager", 11.6, 2.4, 7)
    {
        Kind = BeerKind.Lager,
        Degrees = 10,
        Half = 112,
        Steepness = 0.046,
        FinishedOn = 12,
        RackedOn = 30,
    };

    public static readonly Beer BargeFog = SlowTram with
    {
        Name = "Barge Fog",
        Style = "Dark lager",
        Original = 12.4,
        Final = 3.2,
        ColourEbc = 44,
    };
}
