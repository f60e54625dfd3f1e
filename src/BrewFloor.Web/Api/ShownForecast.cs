using System.Text.Json.Nodes;
using BrewFloor.Brewing;
using BrewFloor.Brewing.Extract;
using BrewFloor.Brewing.Forecast;
using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Log;
using BrewFloor.Web.Batches;
using BrewFloor.Web.Shell;

namespace BrewFloor.Web.Api;

/// <summary>The forecast of a batch as programs see it; where there is none, why.</summary>
internal static class ShownForecast
{
    public static JsonObject Of(int number, Outcome<BatchForecast> outcome, DateTimeOffset now, Wording words)
    {
        var shown = new JsonObject { ["number"] = number };
        if (!outcome.Gives(out var forecast))
        {
            shown["forecast"] = null;
            shown["why"] = outcome.Refusal!.Code;
            shown["text"] = words.Say(outcome.Refusal);
            return shown;
        }

        shown["forecast"] = Of(forecast, now, words);
        return shown;
    }

    /// <summary>At what gravity the valve is closed and what it is set to, and about when; or why not.</summary>
    public static JsonObject Of(Outcome<ValvePlan> valve, Moment? shutIn, Wording words) =>
        valve.Gives(out var plan)
            ? new()
            {
                ["at"] = ApiQuantities.Shown(plan.CloseAt.Value, "SG"),
                ["gauge"] = ApiQuantities.Shown(Math.Round(plan.Gauge.Kilopascals, 1), "kPa"),
                ["time"] = plan.Forecast is { } forecast ? TimesTo(forecast, plan.CloseAt) : null,
                ["shut_since"] = shutIn is { } shut ? Shown.Of(shut.At) : null,
            }
            : new() { ["why"] = valve.Refusal!.Code, ["text"] = words.Say(valve.Refusal) };

    /// <summary>When it stands at a gravity that was asked for.</summary>
    public static JsonObject Of(BatchForecast forecast, SpecificGravity asked) =>
        new() { ["at"] = ApiQuantities.Shown(asked.Value, "SG"), ["time"] = TimesTo(forecast, asked) };

    private static JsonObject TimesTo(BatchForecast forecast, SpecificGravity gravity) =>
        Band(
            forecast.Outlook.TimeTo(new DegreesPlato(Strength.Plato(gravity))).Value,
            time => Shown.Of(forecast.At(time))
        );

    private static JsonObject Of(BatchForecast forecast, DateTimeOffset now, Wording words) =>
        new()
        {
            ["basis"] = Shown.Of(forecast.Outlook.Basis),
            ["readings"] = forecast.Readings.Count,
            ["pitched"] = Shown.Of(forecast.Pitched),
            ["learned_from"] = new JsonArray([.. forecast.LearnedFrom.Select(number => (JsonNode)number)]),
            ["end_by_forced_ferment"] = forecast.IsEndForced,
            ["assumed"] = new JsonArray([.. ForecastWords.Assumed(forecast, words).Select(text => (JsonNode)text)]),
            ["final"] = Gravities(forecast.Outlook.Final),
            ["done"] = Band(forecast.Outlook.Done, time => Shown.Of(forecast.At(time))),
            ["in_a_day"] = Gravities(forecast.Outlook.InADay),
            ["signs"] = new JsonArray([.. forecast.Outlook.Signs.Select(sign => Of(forecast, sign, words))]),
            ["curve"] = new JsonArray([.. ForecastWords.Ahead(forecast, now).Select(Of)]),
        };

    private static JsonObject Of(BatchForecast forecast, Sign sign, Wording words)
    {
        var unit = sign.Kind is SignKind.Stuck ? "°P/d" : "°P";
        return new()
        {
            ["kind"] = Shown.Of(sign.Kind),
            ["entry"] = forecast.Readings[sign.Reading - 1].Moment.Entry.ToString(),
            ["seen"] = ApiQuantities.Shown(sign.Seen.Value, unit),
            ["expected"] = ApiQuantities.Shown(sign.Expected.Value, "°P"),
            ["error"] = ApiQuantities.Shown(sign.Error.Value, unit),
            ["text"] = ForecastWords.Say(forecast, sign, words),
        };
    }

    private static JsonObject Of((DateTimeOffset At, Band<DegreesPlato> Band) ahead)
    {
        var shown = Gravities(ahead.Band);
        shown["at"] = Shown.Of(ahead.At);
        return shown;
    }

    private static JsonObject Gravities(Band<DegreesPlato> band) =>
        Band(band, extract => ApiQuantities.Shown(Math.Round(Strength.GravityOf(extract).Value, 5), "SG"));

    private static JsonObject Band<T>(Band<T> band, Func<T, JsonNode?> shown) =>
        new()
        {
            ["likely"] = shown(band.Likely),
            ["low_80"] = shown(band.Low80),
            ["high_80"] = shown(band.High80),
            ["low_95"] = shown(band.Low95),
            ["high_95"] = shown(band.High95),
        };
}
