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
    /// <summary>The numbers of the batches of its strain that were learned from.</summary>
    public IReadOnlyList<int> LearnedFrom { get; init; } = [];

    /// <summary>Where it ends was found by a forced ferment of this wort.</summary>
    public bool IsEndForced { get; init; }

    /// <summary>Neither a limit of attenuation nor an earlier batch is known: three quarters of the fall were taken.</summary>
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
    /// <param name="ofItsStrain">Batches pitched with the same strain, the newest first; those that are over and like it teach.</param>
    /// <returns>
    /// Refused: <c>not-fermenting</c>, <c>original-unknown</c>, <c>fall-broken</c> (dry hops went in), <c>several-tanks</c>,
    /// and <c>beyond-forecast</c> for numbers it isn't made for.
    /// </returns>
    public static Outcome<BatchForecast> ForecastOf(
        this BatchState batch,
        Batch thing,
        IEnumerable<(Batch Thing, BatchState State)> ofItsStrain,
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
        var earlier = EarlierBatches.LearnFrom(ofItsStrain, thing, batch, rules);
        var found =
            from recipe in RecipeOf(batch, thing, readings)
            from strain in recipe.WithEarlier([.. earlier.Select(known => known.Did)])
            from prior in IsForced(thing) ? strain.WithForcedFerment(LimitOf(thing)) : strain
            from outlook in Outlook.From(prior, Readings(readings, pitched), now - pitched)
            select new BatchForecast(outlook, pitched, readings, prior.Final)
            {
                LearnedFrom = [.. earlier.Select(known => known.Number)],
                IsEndForced = IsForced(thing),
                IsEndAssumed = thing.LimitOfAttenuation is null && earlier is [],
                IsTemperatureAssumed = WarmestSince(batch, pitched) is null,
            };
        return found.Gives(out var forecast) ? forecast : No("beyond-forecast");
    }

    /// <summary>It ferments in one tank without hops: earlier batches are worth reading.</summary>
    public static bool MayBeForetold(this BatchState batch, Batch thing, HouseRules rules) =>
        RefusalOf(batch, thing, rules) is null;

    private static Refusal? RefusalOf(BatchState batch, Batch thing, HouseRules rules) =>
        batch.StageOf(thing, rules) is not Stage.Fermenting || batch.Pitches is [] ? No("not-fermenting")
        : batch.OriginalGravity is null ? No("original-unknown")
        : batch.InTanks.Count > 1 ? No("several-tanks")
        : batch.DryHops.Any(hop => hop.Moment.At > batch.Pitches[0].Moment.At) ? No("fall-broken")
        : null;

    /// <summary>As the curves of <see cref="Brewing.Forecast"/> take them.</summary>
    internal static GravityReading[] Readings(IEnumerable<GravityFact> read, DateTimeOffset pitched) =>
        [
            .. read.Where(one => one.Moment.At >= pitched)
                .Select(one => new GravityReading(one.Moment.At - pitched, PlatoOf(one.Gravity))),
        ];

    /// <summary>In °C, the highest that was read since the yeast went in, else the usual one of its kind.</summary>
    internal static double WarmestOf(this BatchState batch, Batch thing) =>
        (batch.Pitches is [var pitch, ..] ? WarmestSince(batch, pitch.Moment.At) : null)?.DegreesCelsius
        ?? UsualOf(thing.Kind);

    private static bool IsForced(Batch thing) => thing is { IsLimitForced: true, LimitOfAttenuation: not null };

    private static DegreesPlato LimitOf(Batch thing) => PlatoOf(thing.LimitOfAttenuation!.Value);

    private static Outcome<FermentationPrior> RecipeOf(BatchState batch, Batch thing, GravityFact[] readings)
    {
        var original = PlatoOf(batch.OriginalGravity!.Value);
        var attenuation = thing.LimitOfAttenuation is { } limit
            ? 100 * (1 - (PlatoOf(limit).Value / original.Value))
            : 100 * UsualAttenuation;
        return FermentationPrior.FromRecipe(
            original,
            Ratio.FromPercent(Math.Clamp(attenuation, Lowest, Highest)),
            Temperature.FromDegreesCelsius(Math.Clamp(batch.WarmestOf(thing), 4, 30)),
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
    private static double UsualOf(BeerKind kind) => kind is BeerKind.Lager ? 11 : 19; // °C

    private static DegreesPlato PlatoOf(SpecificGravity gravity) => new(Strength.Plato(gravity));

    private static Refusal No(string code) => new(code, "forecast", "", "");
}
