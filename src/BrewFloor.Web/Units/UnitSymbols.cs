using System.Collections.Frozen;
using BrewFloor.Brewing;
using BrewFloor.Brewing.Carbonation;
using BrewFloor.Domain.Items;
using UnitsNet.Units;

namespace BrewFloor.Web.Units;

/// <summary>Our own unit symbols, on screen and in the API, and what each means.</summary>
/// <remarks>UnitsNet's own abbreviations are not used: its "bbl" is the oil barrel, and it writes litres as "l".</remarks>
public static class UnitSymbols
{
    /// <inheritdoc cref="StockMeasures.Pieces"/>
    public const string Pieces = StockMeasures.Pieces;

    public static readonly FrozenDictionary<string, VolumeUnit> Volumes = Table(
        ("L", VolumeUnit.Liter),
        ("mL", VolumeUnit.Milliliter),
        ("hL", VolumeUnit.Hectoliter),
        ("gal", VolumeUnit.UsGallon),
        ("bbl", VolumeUnit.UsBeerBarrel)
    );

    public static readonly FrozenDictionary<string, TemperatureUnit> Temperatures = Table(
        ("°C", TemperatureUnit.DegreeCelsius),
        ("°F", TemperatureUnit.DegreeFahrenheit)
    );

    public static readonly FrozenDictionary<string, PressureUnit> Pressures = Table(
        ("bar", PressureUnit.Bar),
        ("kPa", PressureUnit.Kilopascal),
        ("psi", PressureUnit.PoundForcePerSquareInch)
    );

    public static readonly FrozenDictionary<string, LengthUnit> Lengths = Table(
        ("mm", LengthUnit.Millimeter),
        ("cm", LengthUnit.Centimeter),
        ("in", LengthUnit.Inch)
    );

    public static readonly FrozenDictionary<string, MassUnit> Masses = Table(
        ("g", MassUnit.Gram),
        ("kg", MassUnit.Kilogram),
        ("oz", MassUnit.Ounce),
        ("lb", MassUnit.Pound)
    );

    public static readonly FrozenDictionary<string, DurationUnit> Durations = Table(
        ("min", DurationUnit.Minute),
        ("h", DurationUnit.Hour)
    );

    public static readonly FrozenDictionary<string, GravityUnit> Gravities = Table(
        ("SG", GravityUnit.Sg),
        ("°P", GravityUnit.Plato)
    );

    public static readonly FrozenDictionary<string, CarbonDioxideUnit> CarbonDioxide = Table(
        ("vol", CarbonDioxideUnit.Volumes),
        ("g/L", CarbonDioxideUnit.GramsPerLitre)
    );

    public static string Of(VolumeUnit unit) => Symbol(Volumes, unit);

    public static string Of(TemperatureUnit unit) => Symbol(Temperatures, unit);

    public static string Of(PressureUnit unit) => Symbol(Pressures, unit);

    public static string Of(LengthUnit unit) => Symbol(Lengths, unit);

    public static string Of(MassUnit unit) => Symbol(Masses, unit);

    public static string Of(DurationUnit unit) => Symbol(Durations, unit);

    public static string Of(GravityUnit unit) => Symbol(Gravities, unit);

    public static string Of(CarbonDioxideUnit unit) => Symbol(CarbonDioxide, unit);

    /// <summary>So much gas in the beer.</summary>
    /// <returns>Refused outside of what <see cref="CarbonDioxideContent"/> takes.</returns>
    public static Outcome<CarbonDioxideContent> Gas(double value, CarbonDioxideUnit unit) =>
        unit is CarbonDioxideUnit.Volumes
            ? CarbonDioxideContent.OfVolumes(value)
            : CarbonDioxideContent.OfGramsPerLitre(value);

    private static string Symbol<TUnit>(FrozenDictionary<string, TUnit> table, TUnit unit)
        where TUnit : struct, Enum => table.First(pair => pair.Value.Equals(unit)).Key;

    private static FrozenDictionary<string, TUnit> Table<TUnit>(params (string Symbol, TUnit Unit)[] pairs) =>
        pairs.ToFrozenDictionary(pair => pair.Symbol, pair => pair.Unit, StringComparer.Ordinal);
}
