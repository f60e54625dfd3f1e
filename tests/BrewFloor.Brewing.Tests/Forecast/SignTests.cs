using System.Globalization;
using BrewFloor.Brewing.Forecast;

namespace BrewFloor.Brewing.Tests.Forecast;

/// <summary>How often the signs are right on simulated batches, read for four days after they stopped falling.</summary>
public class SignTests(ITestOutputHelper output)
{
    private static readonly (SimulatedBatch Batch, GravityReading[] Readings, Outlook Outlook)[] All =
    [
        .. Enumerable.Range(5001, 500).Select(seed => After(new SimulatedBatch(seed))),
    ];

    [Fact]
    public void Stuck_batches_are_called_stuck_and_few_others_are()
    {
        var stuck = All.Where(a => a.Batch.IsStuck && a.Batch.Final > a.Batch.Expected + 1.8).ToArray();
        var (found, falsely) = (
            Share(stuck, SignKind.Stuck),
            Share([.. All.Where(a => !a.Batch.IsStuck)], SignKind.Stuck)
        );

        output.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"of {stuck.Length} stuck {found:P0} found, of the others {falsely:P1} called so"
            )
        );
        Assert.InRange(found, 0.8, 1);
        Assert.InRange(falsely, 0, 0.06); // 1 in 23 when it was set
    }

    [Fact]
    public void Wrong_readings_are_doubted_and_few_others_are()
    {
        var readings = All.SelectMany(a =>
                a.Readings.Select(
                    (r, i) =>
                        (
                            Off: Math.Abs(r.Extract.Value - a.Batch.At(r.After.TotalHours)),
                            Doubted: a.Outlook.Signs.Any(s => s.Kind is SignKind.DoubtfulReading && s.Reading == i + 1)
                        )
                )
            )
            .ToArray();
        var (wrong, right) = (readings.Where(r => r.Off > 0.85).ToArray(), readings.Where(r => r.Off < 0.5).ToArray());
        var (found, falsely) = (wrong.Average(r => r.Doubted ? 1.0 : 0), right.Average(r => r.Doubted ? 1.0 : 0));

        output.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"of {wrong.Length} wrong {found:P0} found, of {right.Length} right {falsely:P1} doubted"
            )
        );
        Assert.InRange(found, 0.8, 1);
        Assert.InRange(falsely, 0, 0.02);
    }

    private static double Share(
        (SimulatedBatch Batch, GravityReading[] Readings, Outlook Outlook)[] batches,
        SignKind kind
    ) => batches.Average(a => a.Outlook.Signs.Any(s => s.Kind == kind) ? 1.0 : 0);

    private static (SimulatedBatch Batch, GravityReading[] Readings, Outlook Outlook) After(SimulatedBatch batch)
    {
        var until = batch.TimeTo(batch.Final + 0.1) + 96;
        var readings = batch.Readings.TakeWhile(r => r.After.TotalHours <= until).ToArray();
        return (batch, readings, Outlook.From(batch.Prior(), readings, readings[^1].After).Value);
    }
}
