using BrewFloor.Brewing.Calculators;
using BrewFloor.Web.Shell;
using BrewFloor.Web.Units;

namespace BrewFloor.Web.Calculators;

/// <summary>Numbers of calculators as their reader wants them: the reader's units, three figures that count.</summary>
internal static class FigureWords
{
    private const string NoBreak = "\u00a0";
    private const double Long = 10_000; // from here on a number is read in groups

    /// <summary>The unit a reader types and reads in; the measure's first where they have chosen none.</summary>
    public static MeasureUnit OwnOf(Measure measure, ReadingUnits units) =>
        measure.Find(
            measure.Name switch
            {
                "volume" => UnitSymbols.Of(units.Volume),
                "temperature" => UnitSymbols.Of(units.Temperature),
                "pressure" => UnitSymbols.Of(units.Pressure),
                "size" => UnitSymbols.Of(units.Length),
                "gravity" => UnitSymbols.Of(units.Gravity),
                _ => measure.First.Symbol,
            }
        ) ?? measure.First;

    /// <summary>The reader's unit, or a smaller one where the number would be a fraction.</summary>
    public static MeasureUnit UnitOf(Figure figure, ReadingUnits units)
    {
        var own = OwnOf(figure.Measure, units);
        var smaller = (figure.Measure.Name, own.Symbol) switch
        {
            ("volume", "L") => "mL",
            ("mass", "kg") => "g",
            ("power", "kW") => "W",
            ("trace", "mg/L") => "µg/L",
            ("hours", "h") => "min",
            _ => null,
        };
        return smaller is not null && figure.Value != 0 && Math.Abs(figure.Value) < 0.995
            ? figure.Measure.Find(smaller)!
            : own;
    }

    /// <summary>"1.05 L".</summary>
    public static string Of(Figure figure, Figures figures)
    {
        var unit = UnitOf(figure, figures.Units);
        return Number(figure, unit, figures) + (unit.Symbol.Length > 0 ? NoBreak + unit.Symbol : "");
    }

    /// <summary>The number alone, in a unit.</summary>
    public static string Number(Figure figure, MeasureUnit unit, Figures figures) =>
        Number(figure.In(unit), figure.Measure == Measure.Alcohol ? "0.0" : FormatOf(unit), figures);

    /// <summary>How a field's start value is typed: never rounded away, with a point or comma as the reader's.</summary>
    public static string Typed(Figure figure, MeasureUnit unit, Figures figures) =>
        figure.In(unit).ToString(unit.Symbol is "SG" ? "0.000#" : "0.###", figures.Culture);

    /// <summary>How numbers in a unit are written; empty where three figures count.</summary>
    public static string FormatOf(MeasureUnit unit) =>
        unit.Symbol switch
        {
            "SG" => "0.0000",
            "°P" or "vol" or "bar" => "0.00",
            "°C" or "°F" or "psi" => "0.0",
            _ => "",
        };

    private static string Number(double value, string format, Figures figures)
    {
        if (format.Length > 0)
        {
            return value.ToString(format, figures.Culture);
        }

        var places = value == 0 ? 0 : Math.Clamp(2 - (int)Math.Floor(Math.Log10(Math.Abs(value))), 0, 8);
        return value.ToString(Math.Abs(value) >= Long ? "#,0" : "0." + new string('#', places), figures.Culture);
    }
}
