using System.Globalization;
using BrewFloor.Brewing.Carbonation;
using BrewFloor.Brewing.Extract;
using BrewFloor.Domain.Items;
using BrewFloor.Domain.Yeast;
using BrewFloor.Web.Units;
using UnitsNet;
using UnitsNet.Units;

namespace BrewFloor.Web.Shell;

/// <summary>Numbers, days and times as one reader wants them: their units, the site's time zone, figures before words.</summary>
/// <param name="culture">Decimal mark and names of days and months.</param>
/// <param name="zone">Of the site.</param>
/// <param name="units">The reader's.</param>
/// <param name="now">When it is read: a day far from it is said with its year. Null: days are said without.</param>
public sealed class Figures(CultureInfo culture, TimeZoneInfo zone, ReadingUnits units, DateTimeOffset? now = null)
{
    private const string NoBreak = "\u00a0";
    private const double SmallGallon = 0.378; // L, a tenth of one: below it a jar or a dose is meant, read in mL
    private const int FarInDays = 300; // a weekday and a date could then be those of another year

    public ReadingUnits Units => units;

    public TimeZoneInfo Zone => zone;

    public CultureInfo Culture => culture;

    /// <summary>A value an objection or a job stands on.</summary>
    public string Of(object? value) =>
        value switch
        {
            null => "?",
            Volume volume => Of(volume),
            Temperature temperature => Of(temperature),
            Pressure pressure => Of(pressure),
            Length length => Of(length),
            Mass mass => Of(mass),
            Duration duration => Of(duration),
            TimeSpan span => Of(span),
            SpecificGravity gravity => Of(gravity),
            CarbonDioxideContent gas => Of(gas),
            YeastAmount amount => Of(amount),
            StockAmount amount => Of(amount),
            DateTimeOffset at => Moment(at),
            DateOnly day => Day(day),
            double number => number.ToString("0.###", culture),
            IFormattable formattable => formattable.ToString(null, culture),
            _ => value.ToString() ?? "?",
        };

    public string Of(Volume volume) =>
        Math.Abs(volume.Liters) < (units.Volume is VolumeUnit.Liter ? 0.995 : SmallGallon) && volume.Liters != 0
            ? With(volume.Milliliters, "0", "mL")
            : With(volume.As(units.Volume), Places(volume.As(units.Volume)), UnitSymbols.Of(units.Volume));

    public string Of(Temperature temperature) =>
        With(temperature.As(units.Temperature), "0.0", UnitSymbols.Of(units.Temperature));

    /// <summary>Gauge, unless the sentence around it says absolute.</summary>
    public string Of(Pressure pressure) =>
        With(
            pressure.As(units.Pressure),
            units.Pressure is PressureUnit.Bar ? "0.00" : "0.#",
            UnitSymbols.Of(units.Pressure)
        );

    public string Of(Length length) => With(length.As(units.Length), "0.#", UnitSymbols.Of(units.Length));

    public string Of(Mass mass) =>
        mass.Kilograms >= 1 ? With(mass.Kilograms, "0.##", "kg") : With(mass.Grams, "0.#", "g");

    public string Of(Duration duration) => Of(duration.ToTimeSpan());

    /// <summary>Rounded as a person says it: minutes below two hours, hours below two days, then days.</summary>
    public string Of(TimeSpan span) =>
        span.TotalMinutes < 120 ? With(span.TotalMinutes, "0", "min")
        : span.TotalHours < 48 ? With(span.TotalHours, "0.#", "h")
        : With(span.TotalDays, "0", Counted("days"));

    public string Of(SpecificGravity gravity) =>
        units.Gravity is GravityUnit.Plato && DegreesPlato.From(gravity) is { IsDone: true, Value: { } plato }
            ? With(plato.Value, "0.0", "°P")
            : gravity.Value.ToString("0.000", culture);

    /// <summary>"2.4 vol".</summary>
    public string Of(CarbonDioxideContent gas) => With(gas.Volumes, "0.0#", UnitSymbols.Of(CarbonDioxideUnit.Volumes));

    /// <summary>"65 %", of 0.65; never broken in two.</summary>
    public string Share(double share) => With(share * 100, "0", "%");

    public string Of(YeastAmount amount) =>
        amount.IsMass ? Of(Mass.FromGrams(amount.Grams)) : Of(Volume.FromMilliliters(amount.Milliliters));

    public string Of(StockAmount amount) =>
        amount.Measure switch
        {
            StockMeasure.Pieces => With(amount.Value, "0", Counted(amount.Value is 1 ? "piece" : UnitSymbols.Pieces)),
            StockMeasure.Mass => Of(Mass.FromGrams(amount.Value)),
            _ => Of(Volume.FromMilliliters(amount.Value)),
        };

    /// <summary>"08:10".</summary>
    public string Time(DateTimeOffset at) => Local(at).ToString("HH:mm", CultureInfo.InvariantCulture);

    /// <summary>"Fri 13 Mar"; with the year when it is far from now.</summary>
    public string Day(DateOnly day) =>
        now is { } at && Math.Abs(DayOf(at).DayNumber - day.DayNumber) > FarInDays
            ? DayOfYear(day)
            : day.ToString("ddd d MMM", culture);

    /// <summary>"Fri 13 Mar 2026".</summary>
    public string DayOfYear(DateOnly day) => day.ToString("ddd d MMM yyyy", culture);

    /// <summary>"Fri 13 Mar, 14:30".</summary>
    public string Moment(DateTimeOffset at) => $"{Day(DayOf(at))},{NoBreak}{Time(at)}";

    public DateOnly DayOf(DateTimeOffset at) => DateOnly.FromDateTime(Local(at).DateTime);

    public DateTimeOffset Local(DateTimeOffset at) => TimeZoneInfo.ConvertTime(at, zone);

    private string Counted(string unit) => Wording.UnitOf(unit, culture);

    private static string Places(double value) =>
        Math.Abs(value) switch
        {
            < 10 => "0.##",
            < 1000 => "0.#",
            _ => "0",
        };

    private string With(double value, string format, string unit) => value.ToString(format, culture) + NoBreak + unit;
}
