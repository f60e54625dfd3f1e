using System.Globalization;
using UnitsNet;

namespace BrewFloor.Brewing;

/// <summary>Refusals by range: the numbers in them are always themselves accepted.</summary>
internal static class Accepted
{
    // L; more than any tank the floor can describe.
    private const double MostLitres = 10_000_000;

    /// <summary>Nothing, or the refusal when a value is outside a range (not a number is outside every range).</summary>
    public static Refusal? Between(double from, double to, double value, string what, string unit = "") =>
        value >= from && value <= to ? null : Outside(from, to, what, unit);

    /// <summary>Nothing, or the refusal of a volume that is negative or larger than any tank.</summary>
    public static Refusal? Litres(Volume volume, string what) => Between(0, MostLitres, volume.Liters, what, "L");

    /// <summary>The same for a volume that is divided by, or that must be there.</summary>
    public static Refusal? SomeLitres(Volume volume, string what) =>
        Between(0.01, MostLitres, volume.Liters, what, "L");

    /// <summary>Nothing, or the refusal of a mass that is negative or larger than the largest tank's.</summary>
    public static Refusal? Kilograms(Mass mass, string what) => Between(0, MostLitres, mass.Kilograms, what, "kg");

    /// <summary>As written in five decimals; a computed end is rounded into the range, to 0.01.</summary>
    public static string Up(double from) => Text(IsRound(from) ? from : Math.Ceiling(from * 100) / 100);

    /// <summary>As written in five decimals; a computed end is rounded into the range, to 0.01.</summary>
    public static string Down(double to) => Text(IsRound(to) ? to : Math.Floor(to * 100) / 100);

    // Apart, so that asking is short enough to be inlined.
    private static Refusal Outside(double from, double to, string what, string unit) =>
        new("out-of-range", what, Up(from), Down(to), unit);

    private static bool IsRound(double value) => Math.Round(value, 5).Equals(value);

    internal static string Text(double value) => value.ToString("0.#####", CultureInfo.InvariantCulture);
}
