using System.Diagnostics;

namespace BrewFloor.Benchmarks.Measuring;

/// <summary>Two ways of doing something, timed in turns, so that whatever else the machine does falls on both.</summary>
/// <param name="BaselineMs">The median of the bare way, in ms.</param>
/// <param name="SubjectMs">The median of ours, in ms.</param>
internal sealed record Round(double BaselineMs, double SubjectMs)
{
    private const int Warming = 100;
    private const int InARow = 10;

    public double Ratio => SubjectMs / BaselineMs;

    /// <summary>One client, <paramref name="times"/> of each.</summary>
    public static async Task<Round> InTurnsAsync(Func<Task> baseline, Func<Task> subject, int times)
    {
        await TimesAsync(baseline, Warming, []);
        await TimesAsync(subject, Warming, []);
        List<double> bare = [];
        List<double> ours = [];
        for (var done = 0; done < times; done += InARow)
        {
            await TimesAsync(baseline, InARow, bare);
            await TimesAsync(subject, InARow, ours);
        }

        return new(Median(bare), Median(ours));
    }

    /// <summary>The median of one way alone, in ms.</summary>
    public static async Task<double> MedianAsync(Func<Task> subject, int times)
    {
        await TimesAsync(subject, Warming / 4, []);
        List<double> ours = [];
        await TimesAsync(subject, times, ours);
        return Median(ours);
    }

    public static double Median(IReadOnlyCollection<double> times) => times.Order().ElementAt(times.Count / 2);

    private static async Task TimesAsync(Func<Task> act, int times, List<double> took)
    {
        for (var i = 0; i < times; i++)
        {
            var began = Stopwatch.GetTimestamp();
            await act();
            took.Add(Stopwatch.GetElapsedTime(began).TotalMilliseconds);
        }
    }
}
