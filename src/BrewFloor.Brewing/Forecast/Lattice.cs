namespace BrewFloor.Brewing.Forecast;

/// <summary>Points that fill eight dimensions evenly and always the same, as normal numbers: no chance is involved.</summary>
/// <remarks>
/// An additive recurrence with the powers of the generalised golden ratio, turned into normal numbers two by two (Box,
/// Muller). Each point has its mirror image, so that means are exact.
/// </remarks>
internal static class Lattice
{
    public const int Points = 512;

    /// <summary>The fall's six, its noise, and one to spare.</summary>
    public const int Dimensions = Fall.Count + 2;

    public static double[][] Normal { get; } = Made();

    private static double[][] Made()
    {
        var ratio = Rising.Where(x => Math.Pow(x, Dimensions + 1) - x, 1, 1, 2);
        var points = new double[Points][];
        for (var i = 0; i < Points / 2; i++)
        {
            var uniform = new double[Dimensions];
            for (var j = 0; j < Dimensions; j++)
            {
                uniform[j] = (0.5 + ((i + 1) * Math.Pow(ratio, -(j + 1)))) % 1;
            }

            points[2 * i] = Turned(uniform);
            points[(2 * i) + 1] = [.. points[2 * i].Select(z => -z)];
        }

        return points;
    }

    private static double[] Turned(double[] uniform)
    {
        var normal = new double[Dimensions];
        for (var j = 0; j < Dimensions; j += 2)
        {
            var radius = Math.Sqrt(-2 * Math.Log(Math.Max(uniform[j], 1e-12)));
            normal[j] = radius * Math.Cos(2 * Math.PI * uniform[j + 1]);
            normal[j + 1] = radius * Math.Sin(2 * Math.PI * uniform[j + 1]);
        }

        return normal;
    }
}
