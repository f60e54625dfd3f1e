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

    /// <summary>When it stands at a gravity, and between when and when: what is over is "by now".</summary>
    public static (string Likely, string Between) Reached(
        BatchForecast forecast,
        DegreesPlato extract,
        DateTimeOffset now,
        Wording words
    )
    {
        var band = forecast.Outlook.TimeTo(extract).Value.Select(time => Time(forecast, time, now, words));
        return (band.Likely, Between(band, words));
    }

    /// <summary>A time of the forecast on the clock.</summary>
    public static string Time(BatchForecast forecast, TimeSpan sincePitching, DateTimeOffset now, Wording words) =>
        forecast.At(sincePitching) is not { } at ? words["forecast-never"]
        : at <= now ? words["forecast-by-now"]
        : words.Figures.Moment(at);

    /// <summary>Four times of five it lies there.</summary>
    public static string Between(Band<string> band, Wording words) =>
        words["forecast-between", new("low", band.Low80), new("high", band.High80)];

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
