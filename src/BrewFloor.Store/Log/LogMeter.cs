using System.Diagnostics;
using System.Diagnostics.Metrics;

namespace BrewFloor.Store.Log;

/// <summary>What is counted of the log for programs that watch the process.</summary>
public static class LogMeter
{
    public const string Name = "BrewFloor";

    private static readonly Meter Meter = new(Name);

    private static readonly Counter<long> Entries = Meter.CreateCounter<long>(
        "brewfloor.log.entries",
        "{entry}",
        "Entries that were stored, by kind."
    );

    private static readonly Counter<long> Requests = Meter.CreateCounter<long>(
        "brewfloor.log.requests",
        "{request}",
        "Requests to store entries, by what became of them: stored, refused, conflict, withheld."
    );

    private static readonly Histogram<double> Duration = Meter.CreateHistogram<double>(
        "brewfloor.log.duration",
        "s",
        "How long a request to store entries took, with waiting for locks and further tries.",
        advice: new() { HistogramBucketBoundaries = [0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 5] }
    );

    internal static void Count(Appended appended, IEnumerable<string> kinds, long since)
    {
        var outcome = appended switch
        {
            Appended.Stored => "stored",
            Appended.Refused => "refused",
            Appended.Conflict => "conflict",
            _ => "withheld",
        };
        Requests.Add(1, new KeyValuePair<string, object?>("outcome", outcome));
        Duration.Record(Stopwatch.GetElapsedTime(since).TotalSeconds);
        if (appended is Appended.Stored)
        {
            foreach (var kind in kinds)
            {
                Entries.Add(1, new KeyValuePair<string, object?>("kind", kind));
            }
        }
    }
}
