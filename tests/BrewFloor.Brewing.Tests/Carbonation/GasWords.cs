using System.Globalization;
using BrewFloor.Brewing.Carbonation;
using UnitsNet;

namespace BrewFloor.Brewing.Tests.Carbonation;

/// <summary>The words that tests of gas and pressure are written in.</summary>
internal static class GasWords
{
    public static CultureInfo Invariant => CultureInfo.InvariantCulture;

    public static Length Sea => Length.Zero;

    public static Length Metres(double metres) => Length.FromMeters(metres);

    public static Pressure Bar(double bar) => Pressure.FromBars(bar);

    public static CarbonDioxideContent Vol(double volumes) => CarbonDioxideContent.OfVolumes(volumes).Value;

    public static Volume Litres(double litres) => Volume.FromLiters(litres);

    public static Mass Kg(double kilograms) => Mass.FromKilograms(kilograms);

    public static Ratio Percent(double percent) => Ratio.FromPercent(percent);

    /// <summary>UnitsNet keeps power as a decimal.</summary>
    public static double InWatts(this Power power) => (double)power.Watts;
}
