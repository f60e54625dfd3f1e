using UnitsNet;

namespace BrewFloor.Brewing.Tanks;

/// <summary>A size of clamp, as it is ordered: in inches of the tube's outside, or as nominal diameter of DIN 32676.</summary>
public enum Clamp
{
    /// <summary>On tube of 12.7 mm.</summary>
    HalfInch,

    /// <summary>On tube of 19.05 mm.</summary>
    ThreeQuarterInch,

    /// <summary>On tube of 25.4 mm; shares its flange with 1 1/2 in.</summary>
    OneInch,

    /// <summary>On tube of 38.1 mm.</summary>
    OneAndAHalfInch,

    /// <summary>On tube of 50.8 mm.</summary>
    TwoInch,

    /// <summary>On tube of 63.5 mm.</summary>
    TwoAndAHalfInch,

    /// <summary>On tube of 76.2 mm.</summary>
    ThreeInch,

    /// <summary>On tube of 101.6 mm.</summary>
    FourInch,

    /// <summary>DIN 32676, on tube of 13 mm.</summary>
    Dn10,

    /// <summary>DIN 32676, on tube of 19 mm.</summary>
    Dn15,

    /// <summary>DIN 32676, on tube of 23 mm.</summary>
    Dn20,

    /// <summary>DIN 32676, on tube of 29 mm.</summary>
    Dn25,

    /// <summary>DIN 32676, on tube of 35 mm.</summary>
    Dn32,

    /// <summary>DIN 32676, on tube of 41 mm.</summary>
    Dn40,

    /// <summary>DIN 32676, on tube of 53 mm.</summary>
    Dn50,

    /// <summary>DIN 32676, on tube of 70 mm.</summary>
    Dn65,

    /// <summary>DIN 32676, on tube of 85 mm.</summary>
    Dn80,

    /// <summary>DIN 32676, on tube of 104 mm.</summary>
    Dn100,
}

/// <summary>A clamp fitting: whether two go together takes the flange and the bore.</summary>
/// <param name="Name">As it is sold, for example <c>DN 40</c>.</param>
/// <param name="Tube">Outside diameter of its tube, mm.</param>
/// <param name="Wall">Of its tube, mm.</param>
/// <param name="Flange">Of its clamp, mm; from memory: a caliper on the fitting comes first.</param>
/// <param name="Rated">With suitable clamp and gasket, kPa gauge; null: no published one here.</param>
public sealed record Ferrule(string Name, Length Tube, Length Wall, Length Flange, Pressure? Rated)
{
    /// <summary>DIN 32676 on tubes of DIN 11850, row 2. Flanges from memory, all else published. Check GE-11, GE-21, GE-22.</summary>
    /// <remarks>ISO 2852:1993, which had other flanges, was withdrawn in 2018; old fittings of it may be on the shelf.</remarks>
    public static IReadOnlyList<Ferrule> Din { get; } =
    [
        Row(10, 13, 1.5, 34),
        Row(15, 19, 1.5, 34),
        Row(20, 23, 1.5, 34),
        Row(25, 29, 1.5, 50.5),
        Row(32, 35, 1.5, 50.5),
        Row(40, 41, 1.5, 50.5),
        Row(50, 53, 1.5, 64),
        Row(65, 70, 2, 91),
        Row(80, 85, 2, 106),
        Row(100, 104, 2, 119),
    ];

    /// <summary>By the inch. The tube's outside is the size itself; walls and flanges from memory. Checks GE-24, GE-25.</summary>
    public static IReadOnlyList<Ferrule> Inch { get; } =
    [
        Row("1/2 in", 0.5, 1.65, 25),
        Row("3/4 in", 0.75, 1.65, 25),
        Row("1 in", 1, 1.65, 50.5),
        Row("1 1/2 in", 1.5, 1.65, 50.5),
        Row("2 in", 2, 1.65, 64),
        Row("2 1/2 in", 2.5, 1.65, 77.5),
        Row("3 in", 3, 1.65, 91),
        Row("4 in", 4, 2.11, 119),
    ];

    /// <summary>Both lists, in the order of <see cref="Clamp"/>.</summary>
    public static IReadOnlyList<Ferrule> All { get; } = [.. Inch, .. Din];

    /// <summary>Inside diameter of its tube, mm.</summary>
    public Length Bore => Length.FromMillimeters(Tube.Millimeters - (2 * Wall.Millimeters));

    /// <summary>What another fitting meets.</summary>
    public Mouth Mouth => new(Flange, Bore);

    /// <summary>The fitting of a size.</summary>
    public static Ferrule Of(Clamp clamp) => All[(int)clamp];

    /// <summary>One clamp holds both.</summary>
    /// <param name="other">The other side.</param>
    public bool ClampsTo(Ferrule other) => new Joint(Mouth, other.Mouth).Holds;

    /// <summary>And nothing is left standing between them.</summary>
    /// <param name="other">The other side.</param>
    public bool IsFlushWith(Ferrule other) => new Joint(Mouth, other.Mouth) is { Holds: true, HasStep: false };

    private static Ferrule Row(int nominal, double tube, double wall, double flange) =>
        new(
            $"DN {nominal}",
            Length.FromMillimeters(tube),
            Length.FromMillimeters(wall),
            Length.FromMillimeters(flange),
            Pressure.FromKilopascals(nominal <= 50 ? 1600 : 1000)
        );

    private static Ferrule Row(string name, double inches, double wall, double flange) =>
        new(
            name,
            Length.FromMillimeters(inches * 25.4),
            Length.FromMillimeters(wall),
            Length.FromMillimeters(flange),
            Rated: null
        );
}
