namespace BrewFloor.Brewing.Yeast;

/// <summary>Yeast cells in a millilitre.</summary>
/// <param name="PerMillilitre">Cells in 1 mL: 12 million in pitched wort, about a billion in a slurry.</param>
public readonly record struct CellDensity(double PerMillilitre) : IComparable<CellDensity>
{
    /// <inheritdoc/>
    public int CompareTo(CellDensity other) => PerMillilitre.CompareTo(other.PerMillilitre);

    /// <summary>Thinner.</summary>
    public static bool operator <(CellDensity left, CellDensity right) => left.CompareTo(right) < 0;

    /// <summary>Thicker.</summary>
    public static bool operator >(CellDensity left, CellDensity right) => left.CompareTo(right) > 0;

    /// <summary>Thinner or equal.</summary>
    public static bool operator <=(CellDensity left, CellDensity right) => left.CompareTo(right) <= 0;

    /// <summary>Thicker or equal.</summary>
    public static bool operator >=(CellDensity left, CellDensity right) => left.CompareTo(right) >= 0;

    // More than packed cells can be, 5.7e9 (6 µm, packed at 0.64).
    internal Refusal? RefusalAs(string what) => Accepted.Between(1e3, 6e9, PerMillilitre, what, "/mL");
}

/// <summary>A number of yeast cells.</summary>
/// <param name="Count">Cells.</param>
public readonly record struct CellCount(double Count)
{
    internal Refusal? RefusalAs(string what) => Accepted.Between(0, 1e18, Count, what);
}
