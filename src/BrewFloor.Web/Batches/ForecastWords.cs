using BrewFloor.Brewing.Extract;
using BrewFloor.Brewing.Forecast;
using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Log;
using BrewFloor.Web.Shell;

namespace BrewFloor.Web.Batches;

/// <summary>What a forecast says, in words and figures; the same on the page and for programs.</summary>
internal static class ForecastWords
{
    private const int Points = 25;

    private static readonly TimeSpan Farthest = TimeSpan.FromDays(21);

    private static readonly TimeSpan Nearest = TimeSpan.FromHours(24);

    /// <summary>From now to a little beyond the end.</summary>
    public static IEnumerable<(DateTimeOffset At, Band<DegreesPlato> Band)> Ahead(
        BatchForecast forecast,
        DateTimeOffset now
    )
    {
        var end = forecast.At(forecast.Outlook.Done.High80) ?? now + Farthest;
        var span = TimeSpan.FromHours(Math.Clamp((end - now).TotalHours, Nearest.TotalHours, Farthest.TotalHours));
        return Enumerable
            .Range(0, Points)
            .Select(i => now + (span * i / (Points - 1)))
            .Select(at => (at, forecast.Outlook.At(at - forecast.Pitched).Value));
    }

    /// <summary>Why a reading is doubted; null when it isn't.</summary>
    public static string? DoubtOf(BatchForecast forecast, GravityFact read, Wording words) =>
        forecast
            .Outlook.Signs.Where(sign => sign.Kind is SignKind.DoubtfulReading)
            .FirstOrDefault(sign => forecast.Readings[sign.Reading - 1].Moment == read.Moment)
            is { } doubt
            ? Say(forecast, doubt, words)
            : null;

    /// <summary>What looks wrong, with the numbers it rests on.</summary>
    public static string Say(BatchForecast forecast, Sign sign, Wording words) =>
        words[
            "forecast-sign-" + sign.Kind,
            new("at", forecast.Readings[sign.Reading - 1].Moment.At),
            new(
                "seen",
                sign.Kind is SignKind.Stuck
                    ? Math.Round(Math.Max(0, sign.Seen.Value), 2)
                    : Strength.GravityOf(sign.Seen)
            ),
            new("expected", Strength.GravityOf(sign.Expected)),
            new("error", Math.Round(sign.Error.Value, 2))
        ];

    /// <summary>What it rests on: readings and plan, earlier batches of the strain, a forced ferment.</summary>
    public static IEnumerable<string> Basis(BatchForecast forecast, Wording words)
    {
        yield return words["forecast-on-" + forecast.Outlook.Basis, new Number("count", forecast.Readings.Count)];
        if (forecast.LearnedFrom is [_, ..] learned)
        {
            yield return words["forecast-on-strain", new Number("batches", string.Join(", ", learned))];
        }

        if (forecast.IsEndForced)
        {
            yield return words[
                "forecast-on-forced-ferment",
                new Number("expected", Strength.GravityOf(forecast.Expected))
            ];
        }
    }

    /// <summary>What nobody said and was taken all the same.</summary>
    public static IEnumerable<string> Assumed(BatchForecast forecast, Wording words)
    {
        if (forecast.IsEndAssumed)
        {
            yield return words["forecast-end-assumed", new Number("expected", Strength.GravityOf(forecast.Expected))];
        }

        if (forecast.IsTemperatureAssumed)
        {
            yield return words["forecast-temperature-assumed"];
        }
    }
}
