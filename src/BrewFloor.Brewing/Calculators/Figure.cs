using BrewFloor.Brewing.Carbonation;
using BrewFloor.Brewing.Extract;
using BrewFloor.Brewing.Yeast;
using UnitsNet;

namespace BrewFloor.Brewing.Calculators;

/// <summary>A number with what it measures.</summary>
/// <param name="Value">In the measure's first unit.</param>
/// <param name="Measure">What it measures.</param>
public readonly record struct Figure(double Value, Measure Measure)
{
    private const double Million = 1e6;

    private const double Billion = 1e9;

    /// <summary>In a unit that people use for it.</summary>
    /// <param name="unit">One of the measure's.</param>
    public double In(MeasureUnit unit) => unit.FromFirst(Value);

    internal static Figure Of(Volume volume) => new(volume.Liters, Measure.Volume);

    internal static Figure Of(Temperature temperature) => new(temperature.DegreesCelsius, Measure.Temperature);

    internal static Figure Of(TemperatureDelta difference) => new(difference.Kelvins, Measure.TemperatureDifference);

    // Always gauge: over the air's own.
    internal static Figure Of(Pressure gauge) => new(gauge.Kilopascals, Measure.Pressure);

    internal static Figure Of(Mass mass) => new(mass.Kilograms, Measure.Mass);

    internal static Figure Milligrams(Mass mass) => new(mass.Milligrams, Measure.Milligrams);

    internal static Figure Of(SpecificGravity gravity) => new(gravity.Value, Measure.Gravity);

    internal static Figure Of(DegreesPlato extract) => new(extract.Value, Measure.Extract);

    internal static Figure Of(Ratio share) => new(share.Percent, Measure.Percent);

    internal static Figure Of(VolumeConcentration share) => new(share.Percent, Measure.Percent);

    internal static Figure Alcohol(VolumeConcentration share) => new(share.Percent, Measure.Alcohol);

    internal static Figure Of(MassFraction share) => new(share.Percent, Measure.Percent);

    internal static Figure PartsPerMillion(VolumeConcentration share) =>
        new(share.PartsPerMillion, Measure.PartsPerMillion);

    internal static Figure Of(MassConcentration strength) => new(strength.GramsPerLiter, Measure.Strength);

    internal static Figure Trace(MassConcentration trace) => new(trace.MilligramsPerLiter, Measure.Trace);

    internal static Figure Of(CarbonDioxideContent content) => new(content.Volumes, Measure.Carbonation);

    internal static Figure Of(CellDensity density) => new(density.PerMillilitre / Million, Measure.Cells);

    internal static Figure Of(CellCount cells) => new(cells.Count / Billion, Measure.CellCount);

    internal static Figure Of(PitchRate rate) => new(rate.PerMillilitreAndPlato / Million, Measure.PitchRate);

    internal static Figure Of(VolumeFlow flow) => new(flow.LitersPerMinute, Measure.Flow);

    internal static Figure Air(VolumeFlow flow) => new(flow.CubicMetersPerHour, Measure.Air);

    internal static Figure Of(Energy heat) => new(heat.Megajoules, Measure.Heat);

    internal static Figure Of(Power power) => new((double)power.Kilowatts, Measure.Power);

    internal static Figure Of(Duration time) => new(time.Hours, Measure.Hours);

    internal static Figure Minutes(TimeSpan time) => new(time.TotalMinutes, Measure.Minutes);

    internal static Figure Of(int count) => new(count, Measure.Count);
}
