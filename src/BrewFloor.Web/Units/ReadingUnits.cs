using UnitsNet.Units;

namespace BrewFloor.Web.Units;

/// <summary>How gravities are written.</summary>
public enum GravityUnit
{
    Sg,
    Plato,
}

/// <summary>How dissolved gas is written.</summary>
public enum CarbonDioxideUnit
{
    Volumes,
    GramsPerLitre,
}

/// <summary>The units a person reads and types in. Stored values never depend on them.</summary>
public sealed record ReadingUnits(
    GravityUnit Gravity,
    TemperatureUnit Temperature,
    PressureUnit Pressure,
    VolumeUnit Volume,
    LengthUnit Length
)
{
    public static readonly ReadingUnits Metric = new(
        GravityUnit.Sg,
        TemperatureUnit.DegreeCelsius,
        PressureUnit.Bar,
        VolumeUnit.Liter,
        LengthUnit.Millimeter
    );

    public static readonly ReadingUnits UsCustomary = new(
        GravityUnit.Sg,
        TemperatureUnit.DegreeFahrenheit,
        PressureUnit.PoundForcePerSquareInch,
        VolumeUnit.UsGallon,
        LengthUnit.Inch
    );

    /// <summary>One word a unit, as kept with the person: "sg c bar L mm". What cannot be read falls back to metric.</summary>
    public static ReadingUnits Parse(string? text)
    {
        var words = (text ?? "").Split(' ');
        return
            words.Length == 5
            && UnitSymbols.Gravities.TryGetValue(words[0], out var gravity)
            && UnitSymbols.Temperatures.TryGetValue(words[1], out var temperature)
            && UnitSymbols.Pressures.TryGetValue(words[2], out var pressure)
            && UnitSymbols.Volumes.TryGetValue(words[3], out var volume)
            && UnitSymbols.Lengths.TryGetValue(words[4], out var length)
            ? new(gravity, temperature, pressure, volume, length)
            : Metric;
    }

    public override string ToString() =>
        $"{UnitSymbols.Of(Gravity)} {UnitSymbols.Of(Temperature)} {UnitSymbols.Of(Pressure)} {UnitSymbols.Of(Volume)} {UnitSymbols.Of(Length)}";
}
