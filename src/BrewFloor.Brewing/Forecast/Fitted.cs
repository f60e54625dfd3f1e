namespace BrewFloor.Brewing.Forecast;

/// <summary>A fall with the weight that the readings and the beliefs give it.</summary>
internal readonly record struct WeighedFall(Fall Fall, double Noise, double Weight);

/// <summary>
/// Laplace's way: the most plausible fall, the bell around it, and a lattice of falls through that bell, each weighed by
/// how plausible it really is.
/// </summary>
internal sealed class Fitted
{
    private const double Tail = 4; // degrees of freedom of a reading's error: few wrong ones do little harm

    private const int Steps = 40;

    private readonly Believed _believed;

    private readonly (double Hours, double Extract)[] _readings;

    private readonly double _trust;

    private readonly double[] _shape;

    private double _lnNoise;

    public Fitted(Believed believed, (double Hours, double Extract)[] readings)
    {
        var medians = Medians.Of(readings);
        _readings = medians.Readings;
        _believed = believed with { LnNoise = OfMedians(believed.LnNoise, medians) };
        _trust = medians.Worth / (1 + (readings.Length / Calibration.Independent));
        _shape = [.. believed.Shape.Select(b => b.Mean)];
        _lnNoise = _believed.LnNoise.Mean;
        var precision = Climb();
        Falls = Around(precision);
        Noise = Math.Exp(medians.Together == 1 ? _lnNoise : NoiseOf(believed.LnNoise, readings));
    }

    public Fall Best => Fall.Of(_shape);

    /// <summary>Of a single reading, °P.</summary>
    public double Noise { get; }

    public WeighedFall[] Falls { get; }

    private Cholesky Climb()
    {
        var damping = 1e-3;
        var loss = Loss(_shape, _lnNoise);
        for (var step = 0; step < Steps; step++)
        {
            var (curvature, downhill) = Slope();
            for (var i = 0; i < Fall.Count; i++)
            {
                curvature[i, i] *= 1 + damping;
            }

            var move = Cholesky.Of(curvature)!.Solve(downhill);
            double[] next = [.. _shape.Zip(move, (a, b) => a + b)];
            var lnNoise = NoiseFor(next);
            var better = Loss(next, lnNoise);
            if (!(better < loss))
            {
                damping = Math.Max(damping, 1e-4) * 8;
                if (damping > 1e6)
                {
                    break;
                }

                continue;
            }

            next.CopyTo(_shape, 0);
            var gain = loss - better;
            (_lnNoise, loss, damping) = (lnNoise, better, damping / 8);
            if (gain < 1e-7)
            {
                break;
            }
        }

        return Cholesky.Of(Slope().Curvature)!;
    }

    // Gauss and Newton's curvature of the loss, and the way down.
    private (double[,] Curvature, double[] Downhill) Slope()
    {
        const int n = Fall.Count;
        var (curvature, downhill) = (new double[n, n], new double[n]);
        for (var i = 0; i < n; i++)
        {
            var belief = _believed.Shape[i];
            curvature[i, i] = belief.Precision;
            downhill[i] = (belief.Mean - _shape[i]) * belief.Precision;
        }

        Span<double> slopes = stackalloc double[n];
        var fall = Fall.Of(_shape);
        var variance = Math.Exp(2 * _lnNoise);
        foreach (var (hours, extract) in _readings)
        {
            var rest = extract - fall.At(hours, slopes);
            var weight = _trust * (Tail + 1) / (Tail + (rest * rest / variance)) / variance;
            for (var i = 0; i < n; i++)
            {
                downhill[i] += weight * rest * slopes[i];
                for (var j = 0; j <= i; j++)
                {
                    curvature[i, j] += weight * slopes[i] * slopes[j];
                    curvature[j, i] = curvature[i, j];
                }
            }
        }

        return (curvature, downhill);
    }

    // Many together are off by less than one.
    private static Belief OfMedians(Belief one, Medians medians) =>
        one with
        {
            Mean = one.Mean - (Math.Log(medians.Together / medians.Worth) / 2),
        };

    private double NoiseFor(double[] shape) => NoiseAt(shape, _lnNoise, _believed.LnNoise, _readings);

    private double NoiseOf(Belief belief, (double Hours, double Extract)[] single) =>
        NoiseAt(_shape, belief.Mean, belief, single);

    // The most plausible noise for a shape, by a few steps of Newton on its logarithm.
    private double NoiseAt(double[] shape, double from, Belief belief, (double Hours, double Extract)[] readings)
    {
        var x = from;
        var fall = Fall.Of(shape);
        double[] squares = [.. readings.Select(r => Math.Pow(r.Extract - fall.At(r.Hours), 2))];
        for (var step = 0; step < 4; step++)
        {
            var (slope, bend) = (belief.Precision * (x - belief.Mean), belief.Precision);
            foreach (var square in squares)
            {
                var z = square * Math.Exp(-2 * x);
                slope += _trust * (1 - ((Tail + 1) * z / (Tail + z)));
                bend += _trust * 2 * (Tail + 1) * Tail * z / ((Tail + z) * (Tail + z));
            }

            x -= Math.Clamp(slope / bend, -0.5, 0.5);
        }

        return x;
    }

    private double Loss(ReadOnlySpan<double> shape, double lnNoise)
    {
        var fall = Fall.Of(shape);
        var (perVariance, sum, product) = (Math.Exp(-2 * lnNoise) / Tail, 0.0, 1.0);
        foreach (var (hours, extract) in _readings)
        {
            var rest = extract - fall.At(hours);
            product *= 1 + (rest * rest * perVariance);
            if (product > 1e100) // one logarithm for many readings
            {
                (sum, product) = (sum + Math.Log(product), 1);
            }
        }

        sum += Math.Log(product);
        return (_trust * ((_readings.Length * lnNoise) + ((Tail + 1) / 2 * sum)))
            + _believed.Loss(shape)
            + _believed.LnNoise.Loss(lnNoise);
    }

    private WeighedFall[] Around(Cholesky precision)
    {
        const int n = Fall.Count;
        var (covariance, shape) = (new double[n + 1, n + 1], precision.Inverse());
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < n; j++)
            {
                covariance[i, j] = shape[i, j];
            }
        }

        covariance[n, n] = 1 / (_believed.LnNoise.Precision + (_trust * 2 * _readings.Length * Tail / (Tail + 3)));
        var cloud = Cloud.About([.. _shape, _lnNoise], covariance, p => Loss(p.AsSpan(0, n), p[n]));
        return
        [
            .. cloud.Points.Select(
                (p, i) =>
                {
                    var fall = Fall.Of(p);
                    return new WeighedFall(fall, Math.Exp(p[n]), fall.End < fall.Start - 0.2 ? cloud.Weights[i] : 0);
                }
            ),
        ];
    }
}
