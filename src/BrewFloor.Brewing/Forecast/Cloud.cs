namespace BrewFloor.Brewing.Forecast;

/// <summary>Points about a centre with the weight that each deserves, all from the <see cref="Lattice"/>.</summary>
/// <remarks>
/// Importance sampling in two rounds: the second takes mean and covariance from the first. No weight counts for more than
/// the mean weight times the root of the number, so that no single point decides.
/// </remarks>
internal sealed class Cloud
{
    private const double Wider = 1.25; // than the bell it is drawn from

    private readonly double[] _centre;

    private readonly Cholesky _spread;

    private Cloud(double[] centre, double[,] covariance, int points, Func<double[], double> loss)
    {
        (_centre, _spread) = (centre, Cholesky.Of(covariance)!);
        Points = new double[points][];
        Weights = new double[points];
        var losses = new double[points];
        for (var i = 0; i < points; i++)
        {
            Points[i] = Point(i);
            losses[i] = loss(Points[i]) - Drawn(i);
        }

        var least = losses.Min();
        for (var i = 0; i < points; i++)
        {
            Weights[i] = Math.Exp(least - losses[i]);
        }

        var most = Weights.Average() * Math.Sqrt(points);
        for (var i = 0; i < points; i++)
        {
            Weights[i] = Math.Min(Weights[i], most);
        }
    }

    public double[][] Points { get; }

    public double[] Weights { get; }

    /// <summary>From Laplace's bell: its centre and covariance.</summary>
    public static Cloud About(double[] centre, double[,] covariance, Func<double[], double> loss)
    {
        var first = new Cloud(centre, covariance, Lattice.Points / 2, loss);
        var (mean, own) = first.Moments(covariance);
        return new Cloud(mean, own, Lattice.Points, loss);
    }

    // Mean and covariance, the latter kept from collapsing by a little of the one before.
    private (double[] Mean, double[,] Covariance) Moments(double[,] before)
    {
        const double kept = 0.1;
        var (n, all) = (_centre.Length, Weights.Sum());
        var mean = new double[n];
        for (var i = 0; i < Points.Length; i++)
        {
            for (var j = 0; j < n; j++)
            {
                mean[j] += Weights[i] / all * Points[i][j];
            }
        }

        var covariance = new double[n, n];
        for (var j = 0; j < n; j++)
        {
            for (var k = 0; k < n; k++)
            {
                var sum = 0.0;
                for (var i = 0; i < Points.Length; i++)
                {
                    sum += Weights[i] * (Points[i][j] - mean[j]) * (Points[i][k] - mean[k]);
                }

                covariance[j, k] = ((1 - kept) * sum / all) + (kept * before[j, k]);
            }
        }

        return (mean, covariance);
    }

    private double[] Point(int i)
    {
        var point = new double[_centre.Length];
        _spread.Spread(Lattice.Normal[i].AsSpan(0, point.Length), point);
        for (var j = 0; j < point.Length; j++)
        {
            point[j] = _centre[j] + (Wider * point[j]);
        }

        return point;
    }

    // How plausible the bell itself finds a point, as a loss.
    private double Drawn(int i)
    {
        var sum = 0.0;
        foreach (var z in Lattice.Normal[i].AsSpan(0, _centre.Length))
        {
            sum += z * z;
        }

        return sum / 2;
    }
}
