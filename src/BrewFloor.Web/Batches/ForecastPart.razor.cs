using BrewFloor.Brewing;
using BrewFloor.Brewing.Extract;
using BrewFloor.Brewing.Forecast;
using BrewFloor.Domain.Batches;
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

    private BatchForecast? Forecast => Of.IsDone ? Of.Value : null;

    private IEnumerable<(string Label, string Likely, string Between)> Lines(BatchForecast forecast)
    {
        var (outlook, figures) = (forecast.Outlook, wording.Figures);
        yield return Line("forecast-final", outlook.Final.Select(Gravity));
        yield return Line("forecast-done", outlook.Done.Select(time => Time(forecast, time)));
        yield return Line("forecast-day", outlook.InADay.Select(Gravity));

        string Gravity(DegreesPlato extract) => figures.Of(Strength.GravityOf(extract));
    }

    private (string Label, string Likely, string Between) Line(string key, Band<string> band) =>
        (wording[key], band.Likely, wording["forecast-between", new("low", band.Low80), new("high", band.High80)]);

    // What is over is over: an end in the past is "by now".
    private string Time(BatchForecast forecast, TimeSpan sincePitching) =>
        forecast.At(sincePitching) is not { } at ? wording["forecast-never"]
        : at <= Now ? wording["forecast-by-now"]
        : wording.Figures.Moment(at);
}
