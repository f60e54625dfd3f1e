using BrewFloor.Brewing;
using BrewFloor.Brewing.Extract;
using BrewFloor.Brewing.Forecast;
using BrewFloor.Domain.House;
using UnitsNet;

namespace BrewFloor.Domain.Batches;

/// <summary>Where a batch is going, and what that rests on.</summary>
/// <param name="Outlook">In °P, and in hours since pitching.</param>
/// <param name="Pitched">When the yeast went in.</param>
/// <param name="Readings">Those it was fitted to, in time order.</param>
/// <param name="Expected">Where it was expected to end before anything was read, °P.</param>
public sealed record BatchForecast(
    Outlook Outlook,
    DateTimeOffset Pitched,
    IReadOnlyList<GravityFact> Readings,
    DegreesPlato Expected
)
{
    /// <summary>The batch has no limit of attenuation: three quarters of the fall were taken.</summary>
    public bool IsEndAssumed { get; init; }

    /// <summary>No temperature was read since the yeast went in: the usual one of its kind was taken.</summary>
    public bool IsTemperatureAssumed { get; init; }

    /// <summary>A time of the outlook on the clock; null when it is never reached.</summary>
    public DateTimeOffset? At(TimeSpan sincePitching) =>
        sincePitching < TimeSpan.FromDays(365) ? Pitched + sincePitching : null;
}

/// <summary>The forecast of a batch from what its log tells: derived when it is looked at, never stored.</summary>
public static class Forecasting
{
    private const double UsualAttenuation = 0.75; // of the fall, where no limit is known (ours)

    private const double Lowest = 30; // %, of what a plan is believed

    private const double Highest = 100;

    private static readonly DegreesPlato ByHydrometer = new(0.15);

    private static readonly DegreesPlato ByDensityMeter = new(0.05);

    /// <summary>Only while it ferments, in one tank, by the yeast and the wort it began with.</summary>
    /// <returns>
    /// Refused: <c>not-fermenting</c>, <c>original-unknown</c>, <c>fall-broken</c> (dry hops went in), <c>several-tanks</c>,
    /// and <c>beyond-forecast</c> for numbers it isn't made for.
    /// </returns>
    public static Outcome<BatchForecast> ForecastOf(
        this BatchState batch,
        Batch thing,
        HouseRules rules,
        DateTimeOffset now
    )
    {
        if (RefusalOf(batch, thing, rules) is { } refusal)
        {
            return refusal;
        }

        var pitched = batch.Pitches[0].Moment.At;
        GravityFact[] readings = [.. batch.Gravities.Where(read => read.Moment.At >= pitched && read.Moment.At <= now)];
        var found =
            from prior in PriorOf(batch, thing, pitched, readings)
            from outlook in Outlook.From(
                prior,
                [.. readings.Select(read => new GravityReading(read.Moment.At - pitched, PlatoOf(read.Gravity)))],
                now - pitched
            )
            select new BatchForecast(outlook, pitched, readings, prior.Final)
            {
                IsEndAssumed = thing.LimitOfAttenuation is null,
                IsTemperatureAssumed = WarmestSince(batch, pitched) is null,
            };
        return found.Gives(out var forecast) ? forecast : No("beyond-forecast");
    }

    private static Refusal? RefusalOf(BatchState batch, Batch thing, HouseRules rules) =>
        batch.StageOf(thing, rules) is not Stage.Fermenting || batch.Pitches is [] ? No("not-fermenting")
        : batch.OriginalGravity is null ? No("original-unknown")
        : batch.InTanks.Count > 1 ? No("several-tanks")
        : batch.DryHops.Any(hop => hop.Moment.At > batch.Pitches[0].Moment.At) ? No("fall-broken")
        : null;

    private static Outcome<FermentationPrior> PriorOf(
        BatchState batch,
        Batch thing,
        DateTimeOffset pitched,
        GravityFact[] readings
    )
    {
        var original = PlatoOf(batch.OriginalGravity!.Value);
        var attenuation = thing.LimitOfAttenuation is { } limit
            ? 100 * (1 - (PlatoOf(limit).Value / original.Value))
            : 100 * UsualAttenuation;
        var warmest = WarmestSince(batch, pitched) ?? UsualOf(thing.Kind);
        return FermentationPrior.FromRecipe(
            original,
            Ratio.FromPercent(Math.Clamp(attenuation, Lowest, Highest)),
            Temperature.FromDegreesCelsius(Math.Clamp(warmest.DegreesCelsius, 4, 30)),
            readings is [.., { Instrument: Instrument.DensityMeter }] ? ByDensityMeter : ByHydrometer
        );
    }

    private static Temperature? WarmestSince(BatchState batch, DateTimeOffset pitched)
    {
        double[] read =
        [
            .. batch.TemperaturePeaks.Where(peak => peak.At >= pitched).Select(peak => peak.Temperature.DegreesCelsius),
        ];
        return read is [] ? null : Temperature.FromDegreesCelsius(read.Max());
    }

    // Common practice, no source: the middles that the forecast's own beliefs are made for.
    private static Temperature UsualOf(BeerKind kind) =>
        Temperature.FromDegreesCelsius(kind is BeerKind.Lager ? 11 : 19);

    private static DegreesPlato PlatoOf(SpecificGravity gravity) => new(Strength.Plato(gravity));

    private static Refusal No(string code) => new(code, "forecast", "", "");
}
