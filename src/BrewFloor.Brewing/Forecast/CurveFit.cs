using BrewFloor.Brewing.Extract;
using UnitsNet;

namespace BrewFloor.Brewing.Forecast;

/// <summary>A gravity that was read.</summary>
/// <param name="After">Since pitching.</param>
/// <param name="Extract">Apparent extract, brought to 20 °C, °P.</param>
public readonly record struct GravityReading(TimeSpan After, DegreesPlato Extract);

/// <summary>One standard error of each of a curve's numbers.</summary>
/// <param name="From">Of P0, °P.</param>
/// <param name="To">Of Pe, °P.</param>
/// <param name="Steepness">Of B.</param>
/// <param name="Midpoint">Of M.</param>
public readonly record struct CurveErrors(DegreesPlato From, DegreesPlato To, Frequency Steepness, TimeSpan Midpoint);

/// <summary>A curve through readings alone, with nothing believed beforehand.</summary>
/// <param name="Curve">By unweighted least squares.</param>
/// <param name="SquaredRest">Sum of the squared rests, °P².</param>
/// <param name="Errors">From the rests and (J'J)^-1.</param>
/// <remarks>Levenberg and Marquardt's way. For looking back at a finished batch. Checks KI-04, KI-05.</remarks>
public sealed record CurveFit(FermentationCurve Curve, double SquaredRest, CurveErrors Errors)
{
    private const int N = 4;

    /// <summary>Through a finished batch.</summary>
    /// <param name="readings">Five at least, in any order, that fall by 0.5 °P at least.</param>
    /// <returns>Refused otherwise, and where no curve that falls is found (<c>no-curve</c>).</returns>
    public static Outcome<CurveFit> Through(IReadOnlyList<GravityReading> readings)
    {
        if (readings.Count < 5)
        {
            return new Refusal("too-few-points", "readings", "5", "");
        }

        double[] t = [.. readings.Select(r => r.After.TotalHours)];
        double[] y = [.. readings.Select(r => r.Extract.Value)];
        var fall = y.Max() - y.Min();
        if (Accepted.Between(0.5, 1e6, fall, "fall", "°P") is { } refusal)
        {
            return refusal;
        }

        var half = t[Array.FindIndex(y, v => v <= y.Max() - (fall / 2))];
        double[] p = [y.Max(), y.Min(), 8 / Math.Max(1, t.Max()), Math.Max(1, half)];
        var rest = Descend(t, y, p);
        var precision = Cholesky.Of(Slope(t, y, p).Curvature);
        if (precision is null || !(p[2] > 0) || p[0] <= p[1])
        {
            return new Refusal("no-curve", "readings", "", "");
        }

        var variance = rest / Math.Max(1, t.Length - N);
        return new CurveFit(
            new FermentationCurve(new(p[0]), new(p[1]), Frequency.FromHertz(p[2] / 3600), TimeSpan.FromHours(p[3])),
            rest,
            ErrorsOf(precision.Inverse(), variance)
        );
    }

    private static CurveErrors ErrorsOf(double[,] inverse, double variance)
    {
        return new CurveErrors(
            new(Error(0)),
            new(Error(1)),
            Frequency.FromHertz(Error(2) / 3600),
            TimeSpan.FromHours(Math.Min(1e6, Error(3)))
        );

        double Error(int i) => Math.Sqrt(variance * inverse[i, i]);
    }

    private static double Descend(double[] t, double[] y, double[] p)
    {
        var (rest, damping) = (Rest(t, y, p), 1e-3);
        for (var step = 0; step < 200 && damping < 1e12; step++)
        {
            var (curvature, downhill) = Slope(t, y, p);
            for (var i = 0; i < N; i++)
            {
                curvature[i, i] = (curvature[i, i] * (1 + damping)) + 1e-15;
            }

            var move = Cholesky.Of(curvature)?.Solve(downhill);
            double[] next = move is null ? p : [.. p.Zip(move, (a, b) => a + b)];
            var better = Rest(t, y, next);
            if (move is null || !(better < rest))
            {
                damping *= 10;
                continue;
            }

            next.CopyTo(p, 0);
            (rest, damping) = (better, damping / 10);
        }

        return rest;
    }

    private static double Rest(double[] t, double[] y, double[] p) =>
        t.Zip(y, (at, value) => Math.Pow(value - p[1] - ((p[0] - p[1]) / (1 + Math.Exp(p[2] * (at - p[3])))), 2)).Sum();

    private static (double[,] Curvature, double[] Downhill) Slope(double[] t, double[] y, double[] p)
    {
        var (curvature, downhill) = (new double[N, N], new double[N]);
        Span<double> slopes = stackalloc double[N];
        for (var k = 0; k < t.Length; k++)
        {
            var left = 1 / (1 + Math.Exp(p[2] * (t[k] - p[3])));
            var bend = (p[0] - p[1]) * left * (1 - left);
            (slopes[0], slopes[1]) = (left, 1 - left);
            (slopes[2], slopes[3]) = (-bend * (t[k] - p[3]), bend * p[2]);
            var rest = y[k] - p[1] - ((p[0] - p[1]) * left);
            for (var i = 0; i < N; i++)
            {
                downhill[i] += rest * slopes[i];
                for (var j = 0; j < N; j++)
                {
                    curvature[i, j] += slopes[i] * slopes[j];
                }
            }
        }

        return (curvature, downhill);
    }
}
