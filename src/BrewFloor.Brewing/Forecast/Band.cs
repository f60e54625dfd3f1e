namespace BrewFloor.Brewing.Forecast;

/// <summary>A forecast with how sure it is.</summary>
/// <typeparam name="T">A gravity or a time.</typeparam>
/// <param name="Likely">As likely above as below.</param>
/// <param name="Low80">Four times of five it lies above this and below <paramref name="High80"/>.</param>
/// <param name="High80">See there.</param>
/// <param name="Low95">19 times of 20 it lies above this and below <paramref name="High95"/>.</param>
/// <param name="High95">See there.</param>
public readonly record struct Band<T>(T Likely, T Low80, T High80, T Low95, T High95);

/// <summary>Turns weighed values into a band.</summary>
public static class Bands
{
    private const double Z80 = 1.2816;

    private const double Z95 = 1.96;

    /// <summary>A band, made wider by an error that the values don't know of.</summary>
    internal static Band<double> Of((double Value, double Weight)[] values, double besides)
    {
        Array.Sort(values, (a, b) => a.Value.CompareTo(b.Value));
        var all = values.Sum(v => v.Weight);
        var middle = At(values, all, 0.5);
        return new Band<double>(
            middle,
            Wider(At(values, all, 0.1), Z80),
            Wider(At(values, all, 0.9), Z80),
            Wider(At(values, all, 0.025), Z95),
            Wider(At(values, all, 0.975), Z95)
        );

        double Wider(double value, double z) =>
            double.IsInfinity(value)
                ? value
                : middle + (Math.Sign(value - middle) * double.Hypot(value - middle, z * besides));
    }

    /// <summary>The same band in another measure.</summary>
    /// <typeparam name="TFrom">From.</typeparam>
    /// <typeparam name="TTo">To.</typeparam>
    /// <param name="band">The band.</param>
    /// <param name="to">How one value is turned.</param>
    public static Band<TTo> Select<TFrom, TTo>(this Band<TFrom> band, Func<TFrom, TTo> to) =>
        new(to(band.Likely), to(band.Low80), to(band.High80), to(band.Low95), to(band.High95));

    private static double At((double Value, double Weight)[] sorted, double all, double share)
    {
        var sum = 0.0;
        foreach (var (value, weight) in sorted)
        {
            sum += weight;
            if (sum >= share * all)
            {
                return value;
            }
        }

        return sorted[^1].Value;
    }
}
