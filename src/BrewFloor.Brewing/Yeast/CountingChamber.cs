using UnitsNet;

namespace BrewFloor.Brewing.Yeast;

/// <summary>The part of a counting chamber that was looked at: any grid.</summary>
/// <param name="Squares">How many squares were counted, 1 to 1,000, in all chambers together.</param>
/// <param name="SquareArea">Of one of them, 0.0001 to 25 mm².</param>
/// <param name="Depth">Of the chamber, 0.01 to 1 mm.</param>
public readonly record struct CountingGrid(int Squares, Area SquareArea, Length Depth)
{
    /// <summary>So many of the 25 middle squares of an improved Neubauer chamber: 0.04 mm² by 0.1 mm each.</summary>
    /// <param name="squares">1 to 1,000.</param>
    public static CountingGrid Neubauer(int squares) =>
        new(squares, Area.FromSquareMillimeters(0.04), Length.FromMillimeters(0.1));

    internal double Millilitres => Squares * SquareArea.SquareMillimeters * Depth.Millimeters / 1000;

    internal Refusal? Refusal =>
        Accepted.Between(1, 1000, Squares, "squares")
        ?? Accepted.Between(0.0001, 25, SquareArea.SquareMillimeters, "square-area", "mm²")
        ?? Accepted.Between(0.01, 1, Depth.Millimeters, "depth", "mm");
}

/// <summary>A count of cells.</summary>
/// <param name="Density">In the undiluted sample.</param>
/// <param name="CountingError">One standard error from counting alone, 1/√N: 9 % at 120 cells, 5 % at 400.</param>
/// <param name="PlusMinus">One standard error of the density, with that of diluting.</param>
public readonly record struct YeastCount(CellDensity Density, Ratio CountingError, Ratio PlusMinus);

/// <summary>Counting under the microscope.</summary>
/// <remarks>
/// cells/mL = N times dilution over the volume looked at; Poisson. Count a bud of more than half its mother as a cell, and
/// cells on two borders only; 200 cells at least. Diluting and pipetting add 5 to 10 % (common practice, no source).
/// Source: Neubauer's geometry, ASBC Yeast-4 arithmetic. Check YE-01.
/// </remarks>
public static class CountingChamber
{
    /// <summary>The least worth counting (common practice, no source).</summary>
    public const int EnoughCells = 200;

    /// <summary>From a count.</summary>
    /// <param name="cells">1 to 100,000.</param>
    /// <param name="grid">Where they lay.</param>
    /// <param name="dilution">1 (none) to 100,000: a millilitre in a hundred is 100.</param>
    /// <param name="dilutionError">One standard error of diluting, 0 to 50 %.</param>
    /// <returns>Refused outside, and where more cells come out than can be packed.</returns>
    public static Outcome<YeastCount> Of(int cells, CountingGrid grid, double dilution, Ratio dilutionError)
    {
        var refusal =
            Accepted.Between(1, 100_000, cells, "cells")
            ?? grid.Refusal
            ?? Accepted.Between(1, 100_000, dilution, "dilution")
            ?? Accepted.Between(0, 50, dilutionError.Percent, "dilution-error", "%");
        if (refusal is not null)
        {
            return refusal;
        }

        var density = new CellDensity(cells * dilution / grid.Millilitres);
        var counting = 1 / Math.Sqrt(cells);
        return density.RefusalAs("cell-density") is { } impossible
            ? impossible
            : new YeastCount(
                density,
                Ratio.FromDecimalFractions(counting),
                Ratio.FromDecimalFractions(double.Hypot(counting, dilutionError.DecimalFractions))
            );
    }
}
