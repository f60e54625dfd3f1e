namespace BrewFloor.Brewing.Forecast;

/// <summary>Very many readings, put together: so that a sensor's forecast costs no more than a brewer's.</summary>
/// <remarks>
/// Neighbours in time are replaced by their median, in time and in extract. Where a curve only falls, its median is its
/// value at the median time: nothing is bent, however the readings are spaced, and a wrong one among them is outvoted.
/// </remarks>
internal static class Medians
{
    /// <summary>As many readings as count in full are kept as they are.</summary>
    private const int Most = (int)Calibration.Independent;

    /// <param name="readings">In the order of time.</param>
    /// <returns>At most so many; the same array when there are no more.</returns>
    public static (double Hours, double Extract)[] Of((double Hours, double Extract)[] readings)
    {
        var together = Together(readings.Length);
        return together <= 1 ? readings : [.. readings.Chunk(together | 1).Select(Middle)]; // odd: one is the middle
    }

    /// <summary>A median of many knows the middle less well than their mean by pi / 2: in what is left it counts for more.</summary>
    public static double Worth(int readings) => Together(readings) <= 1 ? 1 : Math.PI / 2;

    private static int Together(int readings) => (readings + Most - 1) / Most;

    // In order of time the extracts fall: of an even number the two middles are taken alike.
    private static (double Hours, double Extract) Middle((double Hours, double Extract)[] some) =>
        (
            some[some.Length / 2].Hours,
            some.Select(reading => reading.Extract).OrderDescending().ElementAt(some.Length / 2)
        );
}
