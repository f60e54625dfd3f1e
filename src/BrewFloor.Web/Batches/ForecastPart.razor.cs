using BrewFloor.Brewing;
using BrewFloor.Brewing.Extract;
using BrewFloor.Brewing.Forecast;
using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Log;
using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Batches;

/// <summary>Where the batch ends and when, each with its range, what that rests on, and what looks wrong.</summary>
public sealed partial class ForecastPart(Wording wording)
{
    [Parameter, EditorRequired]
    public required Outcome<BatchForecast> Of { get; set; }

    [Parameter, EditorRequired]
    public DateTimeOffset Now { get; set; }

    /// <summary>The batch, for the address of the question.</summary>
    [Parameter, EditorRequired]
    public int Number { get; set; }

    [Parameter, EditorRequired]
    public required AskedGravity Asked { get; set; }

    private BatchForecast? Forecast => Of.IsDone ? Of.Value : null;

    private IEnumerable<(string Label, string Likely, string Between)> Lines(BatchForecast forecast)
    {
        var (outlook, figures) = (forecast.Outlook, wording.Figures);
        yield return Line("forecast-final", outlook.Final.Select(Gravity));
        yield return Line(
            "forecast-done",
            outlook.Done.Select(time => ForecastWords.Time(forecast, time, Now, wording))
        );
        yield return Line("forecast-day", outlook.InADay.Select(Gravity));
        if (Asked.Gravity is { } gravity)
        {
            var (likely, between) = ForecastWords.Reached(
                forecast,
                new DegreesPlato(Strength.Plato(gravity)),
                Now,
                wording
            );
            yield return (wording["forecast-at", new Number("gravity", gravity)], likely, between);
        }

        string Gravity(DegreesPlato extract) => figures.Of(Strength.GravityOf(extract));
    }

    private (string Label, string Likely, string Between) Line(string key, Band<string> band) =>
        (wording[key], band.Likely, ForecastWords.Between(band, wording));
}
