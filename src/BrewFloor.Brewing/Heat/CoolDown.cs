using UnitsNet;

namespace BrewFloor.Brewing.Heat;

/// <summary>A temperature of a cool-down that was logged.</summary>
/// <param name="After">Since it began.</param>
/// <param name="Beer">In °C.</param>
public readonly record struct LoggedTemperature(TimeSpan After, Temperature Beer);

/// <summary>What a tank's own cool-down says about it.</summary>
/// <param name="Passage">Area times U, W/K.</param>
/// <param name="PlusMinus">One standard error of it, from how far the readings are off the curve.</param>
public readonly record struct LearnedPassage(HeatPassage Passage, Ratio PlusMinus);

/// <summary>Learns how well a tank is cooled from one of its own cool-downs: better than any table.</summary>
/// <remarks>
/// T - Tc = (T0 - Tc) exp(-UA t / (m cp)): a straight line through the logarithms, by least squares. An overall U fits,
/// but goes with the geometry (Larson, Brandon 1988, MBAA TQ 25:41). Readings after 3 °C may show the layers turning over.
/// </remarks>
public static class CoolDown
{
    /// <summary>From a log.</summary>
    /// <param name="beer">0.001 to 10,000,000 kg.</param>
    /// <param name="heat">Specific heat, 3 to 4.3 kJ/(kg K).</param>
    /// <param name="coolant">-30 to 30 °C, the same all the time.</param>
    /// <param name="log">Three readings at least, all more than 0.2 K warmer than the coolant.</param>
    /// <returns>
    /// Refused outside, with the row of a reading; and where the readings don't fall (<c>heat-passage</c>).
    /// </returns>
    public static Outcome<LearnedPassage> Learn(
        Mass beer,
        SpecificEntropy heat,
        Temperature coolant,
        IReadOnlyList<LoggedTemperature> log
    )
    {
        var refusal =
            Accepted.Between(0.001, 1e7, beer.Kilograms, "beer", "kg")
            ?? SpecificHeat.RefusalOf(heat)
            ?? Accepted.Between(-30, 30, coolant.DegreesCelsius, "coolant", "°C")
            ?? RefusalOf(coolant, log);
        if (refusal is not null)
        {
            return refusal;
        }

        var (slope, error) = Line(
            [.. log.Select(r => r.After.TotalSeconds)],
            [.. log.Select(r => Math.Log(r.Beer.Kelvins - coolant.Kelvins))]
        );
        var passage = new HeatPassage(-slope * beer.Kilograms * heat.KilojoulesPerKilogramKelvin * 1000);
        return passage.Refusal is { } nothing
            ? nothing
            : new LearnedPassage(passage, Ratio.FromDecimalFractions(error / -slope));
    }

    private static Refusal? RefusalOf(Temperature coolant, IReadOnlyList<LoggedTemperature> log)
    {
        if (log.Count < 3)
        {
            return new Refusal("too-few-points", "cool-down", "3", "");
        }

        for (var i = 0; i < log.Count; i++)
        {
            var earliest = i == 0 ? 0 : log[i - 1].After.TotalHours + (1.0 / 3600);
            var refusal =
                Accepted.Between(earliest, 10_000, log[i].After.TotalHours, "after", "h")
                ?? Accepted.Between(coolant.DegreesCelsius + 0.2, 100, log[i].Beer.DegreesCelsius, "temperature", "°C");
            if (refusal is not null)
            {
                return refusal with { Row = i + 1 };
            }
        }

        return null;
    }

    // The slope of y over x by least squares, and its standard error.
    private static (double Slope, double Error) Line(double[] x, double[] y)
    {
        var (mx, my) = (x.Average(), y.Average());
        var sxx = x.Sum(v => (v - mx) * (v - mx));
        var slope = x.Zip(y, (a, b) => (a - mx) * (b - my)).Sum() / sxx;
        var rest = x.Zip(y, (a, b) => Math.Pow(b - my - (slope * (a - mx)), 2)).Sum();
        return (slope, Math.Sqrt(rest / (x.Length - 2) / sxx));
    }
}
