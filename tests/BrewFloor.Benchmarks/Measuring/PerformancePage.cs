using System.Globalization;
using BrewFloor.Benchmarks.Drills;

namespace BrewFloor.Benchmarks.Measuring;

/// <summary>The page of the docs that full measurements write.</summary>
internal static class PerformancePage
{
    public static Task WriteAsync(string root, string table, CancellationToken stop)
    {
        var day = DateOnly.FromDateTime(TimeProvider.System.GetLocalNow().Date);
        var page = string.Create(
            CultureInfo.InvariantCulture,
            $"""
            # Performance

            Written by `./brewfloor bench` on {day:d MMMM yyyy}: {Machine.Words}, which other work shares (load {Machine.Load}).
            One client; what is compared runs in turns in one process, and the figures are medians. Ratios say what holds on
            other machines too; milliseconds hold here.

            {table.TrimEnd()}

            - *Bare statements*: the same locks, reads and inserts in as many round trips, with nothing read out of JSON,
              judged or folded. PostgreSQL's own counts of written rows are compared first.
            - *Bare endpoint*: in the same process, checks the same cookie, sends the same questions, reads every row of the
              answers, and writes as many bytes as the page has.
            - *Two million entries* are twice a hundred tanks' work of four years, loaded by COPY and folded.
            - *Forecasts* are of batches made up by a curve and chance, each another one. *The bare loop* has its gravities as
              plain numbers; that both loops find the same sum is checked first.

            """
        );
        return File.WriteAllTextAsync(Path.Combine(root, "docs", "operate", "performance.md"), page, stop);
    }
}
