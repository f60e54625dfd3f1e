using UnitsNet;

namespace BrewFloor.Brewing.Tanks;

/// <summary>A clamp fitting: whether two go together takes the flange and the bore.</summary>
/// <param name="Name">As it is sold, for example <c>DN 40</c>.</param>
/// <param name="Tube">Outside diameter of its tube, mm.</param>
/// <param name="Wall">Of its tube, mm.</param>
/// <param name="Flange">Of its clamp, mm; from memory.</param>
/// <param name="Rated">With suitable clamp and gasket, kPa gauge.</param>
public sealed record Ferrule(string Name, Length Tube, Length Wall, Length Flange, Pressure Rated)
{
    /// <summary>DIN 32676 on tubes of DIN 11850, row 2. Flanges from memory, all else published. Check GE-11, GE-21, GE-22.</summary>
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

    /// <summary>Inside diameter of its tube, mm.</summary>
    public Length Bore => Length.FromMillimeters(Tube.Millimeters - (2 * Wall.Millimeters));

    /// <summary>One clamp holds both.</summary>
    /// <param name="other">The other side.</param>
    public bool ClampsTo(Ferrule other) => Math.Abs(Flange.Millimeters - other.Flange.Millimeters) < 0.5;

    /// <summary>And nothing is left standing between them.</summary>
    /// <param name="other">The other side.</param>
    public bool IsFlushWith(Ferrule other) =>
        ClampsTo(other) && Math.Abs(Bore.Millimeters - other.Bore.Millimeters) < 0.5;

    private static Ferrule Row(int nominal, double tube, double wall, double flange) =>
        new(
            $"DN {nominal}",
            Length.FromMillimeters(tube),
            Length.FromMillimeters(wall),
            Length.FromMillimeters(flange),
            Pressure.FromKilopascals(nominal <= 50 ? 1600 : 1000)
        );
}
