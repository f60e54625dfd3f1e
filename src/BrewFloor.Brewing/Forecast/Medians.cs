namespace BrewFloor.Brewing.Forecast;

/// <summary>Very many readings, put together: so that a sensor's forecast costs no more than a brewer's.</summary>
/// <param name="Readings">At most so many as count in full; each is the middle of as many neighbours.</param>
/// <param name="Together">How many neighbours, an odd number; 1: none was put together.</param>
/// <remarks>
/// Neighbours in time are replaced by their median, in time and in extract. Where a curve only falls, its median is its
/// value at the median time: nothing is bent, however the readings are spaced, and a wrong one among them is outvoted.
/// </remarks>
internal sealed record Medians((double Hours, double Extract)[] Readings, int Together)
{
    private const int Most = (int)Calibration.Independent;

    /// <summary>What a median of normal errors knows less than their mean: its variance times their number.</summary>
    /// <remarks>Computed: 3 · 0.449, 5 · 0.287, 9 · 0.166; pi / 2 for very many.</remarks>
    public double Worth =>
        Together switch
        {
            1 => 1,
            3 => 1.35,
            5 => 1.43,
            _ => 1.5,
        };

    /// <param name="readings">In the order of time. What is left over by the number stands first, where the wort is known.</param>
    public static Medians Of((double Hours, double Extract)[] readings)
    {
        var together = ((readings.Length + Most - 1) / Most) | 1;
        var first = readings.Length % together;
        return together == 1
            ? new(readings, 1)
            : new(
                [
                    .. first == 0 ? [] : new[] { Middle(readings[..first]) },
                    .. readings.Skip(first).Chunk(together).Select(Middle),
                ],
                together
            );
    }

    // In order of time the extracts fall: of an even number the two middles are taken alike.
    private static (double Hours, double Extract) Middle((double Hours, double Extract)[] some) =>
        (
            some[some.Length / 2].Hours,
            some.Select(reading => reading.Extract).OrderDescending().ElementAt(some.Length / 2)
        );
}
