using BrewFloor.Brewing.Carbonation;
using BrewFloor.Brewing.Extract;
using UnitsNet;
using UnitsNet.Units;

namespace BrewFloor.Brewing.Calculators;

/// <summary>A unit that people may use, and how it goes into the one that formulas take and back.</summary>
/// <param name="Symbol">As it is written: <c>hL</c>.</param>
/// <param name="ToFirst">Into the measure's first unit; not a number where there is no such value.</param>
/// <param name="FromFirst">The inverse.</param>
public sealed record MeasureUnit(string Symbol, Func<double, double> ToFirst, Func<double, double> FromFirst);

/// <summary>What a number measures, and the units it may be given in. The first is the one that formulas take.</summary>
/// <remarks>A pressure is gauge unless its name says absolute.</remarks>
public sealed record Measure
{
    private static readonly double GramsPerVolume = CarbonDioxideContent.PerVolume.GramsPerLiter;

    private Measure(string name, params IReadOnlyList<MeasureUnit> units) => (Name, Units) = (name, units);

    /// <summary>Beer, water, slurry.</summary>
    public static Measure Volume { get; } =
        Of(
            "volume",
            VolumeUnit.Liter,
            ("L", VolumeUnit.Liter),
            ("hL", VolumeUnit.Hectoliter),
            ("gal", VolumeUnit.UsGallon),
            ("bbl", VolumeUnit.UsBeerBarrel),
            ("mL", VolumeUnit.Milliliter)
        );

    /// <summary>A room.</summary>
    public static Measure Space { get; } =
        Of("space", VolumeUnit.CubicMeter, ("m³", VolumeUnit.CubicMeter), ("ft³", VolumeUnit.CubicFoot));

    /// <summary>A temperature.</summary>
    public static Measure Temperature { get; } =
        Of(
            "temperature",
            TemperatureUnit.DegreeCelsius,
            ("°C", TemperatureUnit.DegreeCelsius),
            ("°F", TemperatureUnit.DegreeFahrenheit)
        );

    /// <summary>How much warmer.</summary>
    public static Measure TemperatureDifference { get; } = Alone("temperature-difference", "K");

    /// <summary>Over the air's own.</summary>
    public static Measure Pressure { get; } =
        Of(
            "pressure",
            PressureUnit.Kilopascal,
            ("kPa", PressureUnit.Kilopascal),
            ("bar", PressureUnit.Bar),
            ("psi", PressureUnit.PoundForcePerSquareInch)
        );

    /// <summary>Of tanks and hoses.</summary>
    public static Measure Size { get; } =
        Of(
            "size",
            LengthUnit.Millimeter,
            ("mm", LengthUnit.Millimeter),
            ("cm", LengthUnit.Centimeter),
            ("in", LengthUnit.Inch)
        );

    /// <summary>Of places and pumps.</summary>
    public static Measure Height { get; } =
        Of("height", LengthUnit.Meter, ("m", LengthUnit.Meter), ("ft", LengthUnit.Foot));

    /// <summary>Of walls and jackets.</summary>
    public static Measure Area { get; } =
        Of("area", AreaUnit.SquareMeter, ("m²", AreaUnit.SquareMeter), ("ft²", AreaUnit.SquareFoot));

    /// <summary>Of a cone, wall to wall.</summary>
    public static Measure Angle { get; } = Alone("angle", "°");

    /// <summary>What is weighed.</summary>
    public static Measure Mass { get; } =
        Of(
            "mass",
            MassUnit.Kilogram,
            ("kg", MassUnit.Kilogram),
            ("g", MassUnit.Gram),
            ("lb", MassUnit.Pound),
            ("oz", MassUnit.Ounce)
        );

    /// <summary>Of oxygen.</summary>
    public static Measure Milligrams { get; } = Alone("milligrams", "mg");

    /// <summary>How old.</summary>
    public static Measure Days { get; } = Of("days", DurationUnit.Day, ("d", DurationUnit.Day));

    /// <summary>How long.</summary>
    public static Measure Hours { get; } =
        Of("hours", DurationUnit.Hour, ("h", DurationUnit.Hour), ("d", DurationUnit.Day), ("min", DurationUnit.Minute));

    /// <summary>How long, shorter.</summary>
    public static Measure Minutes { get; } = Of("minutes", DurationUnit.Minute, ("min", DurationUnit.Minute));

    /// <summary>By hydrometer or density meter.</summary>
    public static Measure Gravity { get; } =
        new("gravity", new MeasureUnit("SG", sg => sg, sg => sg), new MeasureUnit("°P", FromPlato, ToPlato));

    /// <summary>Extract alone, which has no gravity of its own.</summary>
    public static Measure Extract { get; } = Alone("extract", "°P");

    /// <summary>A share.</summary>
    public static Measure Percent { get; } = Alone("percent", "%");

    /// <summary>Alcohol by volume: one decimal is honest.</summary>
    public static Measure Alcohol { get; } = Alone("alcohol", "%");

    /// <summary>Of cleaners and hops in a liquid.</summary>
    public static Measure Strength { get; } =
        Of(
            "strength",
            MassConcentrationUnit.GramPerLiter,
            ("g/L", MassConcentrationUnit.GramPerLiter),
            ("mg/L", MassConcentrationUnit.MilligramPerLiter),
            ("oz/gal", MassConcentrationUnit.OuncePerUSGallon)
        );

    /// <summary>Of oxygen in a liquid.</summary>
    public static Measure Trace { get; } =
        Of(
            "trace",
            MassConcentrationUnit.MilligramPerLiter,
            ("mg/L", MassConcentrationUnit.MilligramPerLiter),
            ("µg/L", MassConcentrationUnit.MicrogramPerLiter)
        );

    /// <summary>CO2 in beer.</summary>
    public static Measure Carbonation { get; } =
        new(
            "carbonation",
            new MeasureUnit("vol", v => v, v => v),
            new MeasureUnit("g/L", g => g / GramsPerVolume, v => v * GramsPerVolume)
        );

    /// <summary>Yeast in a slurry.</summary>
    public static Measure Cells { get; } = Alone("cells", "million/mL");

    /// <summary>Yeast in all.</summary>
    public static Measure CellCount { get; } = Alone("cell-count", "billion");

    /// <summary>Yeast for wort.</summary>
    public static Measure PitchRate { get; } = Alone("pitch-rate", "million/mL/°P");

    /// <summary>Of a pump.</summary>
    public static Measure Flow { get; } =
        Of(
            "flow",
            VolumeFlowUnit.LiterPerMinute,
            ("L/min", VolumeFlowUnit.LiterPerMinute),
            ("gal/min", VolumeFlowUnit.UsGallonPerMinute)
        );

    /// <summary>Fresh air.</summary>
    public static Measure Air { get; } = Alone("air", "m³/h");

    /// <summary>A flow on each metre of circumference.</summary>
    public static Measure WallFlow { get; } = Alone("wall-flow", "L/min/m");

    /// <summary>CO2 given off.</summary>
    public static Measure Release { get; } = Alone("release", "kg/h");

    /// <summary>Of a concentrate.</summary>
    public static Measure Density { get; } = Alone("density", "kg/L");

    /// <summary>Heat, a quantity of it.</summary>
    public static Measure Heat { get; } =
        Of("heat", EnergyUnit.Megajoule, ("MJ", EnergyUnit.Megajoule), ("kWh", EnergyUnit.KilowattHour));

    /// <summary>Heat in a time.</summary>
    public static Measure Power { get; } = new("power", Scaled("kW", 1), Scaled("W", 0.001));

    /// <summary>What a wall lets through.</summary>
    public static Measure HeatTransfer { get; } = Alone("heat-transfer", "W/(m² K)");

    /// <summary>How steep a fermentation is.</summary>
    public static Measure PerDay { get; } = Alone("per-day", "1/d");

    /// <summary>A small share of a gas, by volume.</summary>
    public static Measure PartsPerMillion { get; } = Alone("parts-per-million", "ppm");

    /// <summary>Whole things that are counted; no unit.</summary>
    public static Measure Count { get; } = Alone("count", "");

    /// <summary>A plain number; no unit.</summary>
    public static Measure Number { get; } = Alone("number", "");

    /// <summary>Its key in programs.</summary>
    public string Name { get; }

    /// <summary>All that people may use.</summary>
    public IReadOnlyList<MeasureUnit> Units { get; }

    /// <summary>The unit that formulas take.</summary>
    public MeasureUnit First => Units[0];

    /// <summary>The unit with a symbol; <see langword="null"/> where people may not use it for this.</summary>
    /// <param name="symbol">As it is written.</param>
    public MeasureUnit? Find(string? symbol) =>
        Units.FirstOrDefault(unit => string.Equals(unit.Symbol, symbol, StringComparison.Ordinal));

    /// <inheritdoc/>
    public override string ToString() => Name;

    private static double FromPlato(double plato) =>
        new DegreesPlato(plato).ToGravity() is { IsDone: true, Value: var gravity } ? gravity.Value : double.NaN;

    private static double ToPlato(double gravity) =>
        SpecificGravity.Found(gravity) is { IsDone: true, Value: var known }
        && DegreesPlato.From(known) is { IsDone: true, Value: var plato }
            ? plato.Value
            : double.NaN;

    private static Measure Alone(string name, string symbol) => new(name, Scaled(symbol, 1));

    private static MeasureUnit Scaled(string symbol, double inFirst) => new(symbol, v => v * inFirst, v => v / inFirst);

    private static Measure Of(string name, Enum first, params (string Symbol, Enum Unit)[] units) =>
        new(
            name,
            [
                .. units.Select(unit => new MeasureUnit(
                    unit.Symbol,
                    value => UnitConverter.Convert(value, unit.Unit, first),
                    value => UnitConverter.Convert(value, first, unit.Unit)
                )),
            ]
        );
}
