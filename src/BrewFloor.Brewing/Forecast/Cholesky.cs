namespace BrewFloor.Brewing.Forecast;

/// <summary>A small positive matrix, split into a lower triangle times itself turned over.</summary>
internal sealed class Cholesky
{
    private readonly double[,] _lower;

    private readonly int _n;

    private Cholesky(double[,] lower) => (_lower, _n) = (lower, lower.GetLength(0));

    /// <summary>Nothing, when the matrix isn't positive.</summary>
    public static Cholesky? Of(double[,] matrix)
    {
        var n = matrix.GetLength(0);
        var lower = new double[n, n];
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j <= i; j++)
            {
                var sum = matrix[i, j];
                for (var k = 0; k < j; k++)
                {
                    sum -= lower[i, k] * lower[j, k];
                }

                if (i == j && !(sum > 0))
                {
                    return null;
                }

                lower[i, j] = i == j ? Math.Sqrt(sum) : sum / lower[j, j];
            }
        }

        return new Cholesky(lower);
    }

    /// <summary>What the matrix makes the right side from.</summary>
    public double[] Solve(ReadOnlySpan<double> right)
    {
        var y = new double[_n];
        for (var i = 0; i < _n; i++)
        {
            var sum = right[i];
            for (var k = 0; k < i; k++)
            {
                sum -= _lower[i, k] * y[k];
            }

            y[i] = sum / _lower[i, i];
        }

        Turned(y);
        return y;
    }

    /// <summary>Turns independent normal numbers into ones whose precision is the matrix.</summary>
    public void Turned(Span<double> normal)
    {
        for (var i = _n - 1; i >= 0; i--)
        {
            var sum = normal[i];
            for (var k = i + 1; k < _n; k++)
            {
                sum -= _lower[k, i] * normal[k];
            }

            normal[i] = sum / _lower[i, i];
        }
    }

    /// <summary>Turns independent normal numbers into ones whose covariance is the matrix.</summary>
    public void Spread(ReadOnlySpan<double> normal, Span<double> to)
    {
        for (var i = 0; i < _n; i++)
        {
            var sum = 0.0;
            for (var k = 0; k <= i; k++)
            {
                sum += _lower[i, k] * normal[k];
            }

            to[i] = sum;
        }
    }

    /// <summary>The inverse of the matrix.</summary>
    public double[,] Inverse()
    {
        var inverse = new double[_n, _n];
        for (var j = 0; j < _n; j++)
        {
            var column = new double[_n];
            column[j] = 1;
            column = Solve(column);
            for (var i = 0; i < _n; i++)
            {
                inverse[i, j] = column[i];
            }
        }

        return inverse;
    }
}
