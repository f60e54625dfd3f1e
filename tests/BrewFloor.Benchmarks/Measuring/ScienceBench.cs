using BrewFloor.Brewing.Extract;
using BrewFloor.Brewing.Forecast;
using UnitsNet;

namespace BrewFloor.Benchmarks.Measuring;

/// <summary>
/// A batch's forecast, and a million gravities turned into °P against a bare loop over the same polynomials.
/// </summary>
internal static class ScienceBench
{
    private const int Gravities = 1_000_000;
    private const int ByHand = 14; // two a day for a week
    private const int Most = 500; // readings that a forecast takes
    private const int Rounds = 100;
    private const double MostMs = 5; // for a batch, however often it was read

    public static async Task<IReadOnlyList<Measured>> RunAsync()
    {
        var gravities = new GravityLoops(Gravities);
        gravities.DemandSameExtract();
        return
        [
            new(
                $"forecast of a batch with {ByHand} readings, bands and signs included",
                await ForecastAsync(ByHand),
                MostMs,
                "ms"
            ),
            new(
                $"forecast of a batch with {Most} readings, the most it takes",
                await ForecastAsync(Most),
                MostMs,
                "ms"
            ),
            Measured.Ratio(
                $"{Gravities:N0} gravities turned into °P / a bare loop over the same polynomials",
                await Round.InTurnsAsync(gravities.BareAsync, gravities.OursAsync, Rounds),
                2
            ),
        ];
    }

    // Every batch is another one: a fit from where the last one ended would flatter.
    private static async Task<double> ForecastAsync(int readings)
    {
        var batches = Enumerable.Range(0, 2 * Rounds).Select(i => Batch.Of(i, readings)).ToArray();
        var next = 0;
        return await Round.MedianAsync(Fit, batches.Length);

        Task Fit()
        {
            batches[next++ % batches.Length].Forecast();
            return Task.CompletedTask;
        }
    }

    private sealed record Batch(FermentationPrior Prior, IReadOnlyList<GravityReading> Readings, TimeSpan Now)
    {
        public void Forecast()
        {
            if (!Outlook.From(Prior, Readings, Now).IsDone)
            {
                throw new InvalidOperationException("The forecast was refused: nothing was measured.");
            }
        }

        public static Batch Of(int seed, int readings)
        {
            var chance = new Random(seed);
            var original = 9 + (9 * chance.NextDouble());
            var warmth = 10 + (12 * chance.NextDouble());
            var prior = FermentationPrior
                .FromRecipe(
                    new(original),
                    Ratio.FromPercent(75),
                    Temperature.FromDegreesCelsius(warmth),
                    new DegreesPlato(0.15)
                )
                .Value;
            var curve = new FermentationCurve(
                new(original),
                new(original * (0.18 + (0.14 * chance.NextDouble()))),
                prior.Steepness * Math.Exp(chance.NextDouble() - 0.5),
                prior.Midpoint * Math.Exp(chance.NextDouble() - 0.5)
            );
            var hours = 2 * curve.Midpoint.TotalHours;
            GravityReading[] read =
            [
                .. Enumerable
                    .Range(1, readings)
                    .Select(i => Read(curve, TimeSpan.FromHours(hours * i / readings), chance)),
            ];
            return new(prior, read, read[^1].After);
        }

        private static GravityReading Read(FermentationCurve curve, TimeSpan after, Random chance) =>
            new(after, new(curve.At(after).Value + (0.5 * (chance.NextDouble() - 0.5))));
    }
}
