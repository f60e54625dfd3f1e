using BrewFloor.Brewing.Extract;
using BrewFloor.Brewing.Forecast;
using BrewFloor.Domain.Batches;
using BrewFloor.Web.Drawing;
using BrewFloor.Web.Shell;
using BrewFloor.Web.Units;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Batches;

/// <summary>The gravities of a batch on their days, with what was pitched, dumped and added.</summary>
public sealed partial class BatchChart(Wording wording)
{
    [Parameter, EditorRequired]
    public required ShownBatch Batch { get; set; }

    /// <summary>What is still to come, where there is a forecast.</summary>
    [Parameter]
    public BatchForecast? Forecast { get; set; }

    private BatchState State => Batch.State;

    private bool IsPlato => wording.Figures.Units.Gravity is GravityUnit.Plato;

    // A beer that is gone needs no empty days up to today.
    private DateTimeOffset? Until => State.Closed is { } closed ? closed.At.AddHours(6) : null;

    private IReadOnlyList<ChartPanel> Panels =>
        [
            new ChartPanel(
                ChartKind.Gravity,
                wording["chart-gravity"],
                IsPlato ? "°P" : "SG",
                IsPlato ? "0.0" : "0.000",
                [.. State.Gravities.Select(Reading)]
            )
            {
                Forecast = Forecast is null ? [] : [.. ForecastWords.Ahead(Forecast, Batch.Now).Select(Shown)],
                Levels = Batch.Thing.LimitOfAttenuation is { } limit
                    ? [new ChartLevel(ValueOf(limit), wording["chart-limit"], ChartLevelKind.Target)]
                    : [],
            },
        ];

    private IReadOnlyList<ChartEvent> Events =>
        [
            .. State.Pitches.Select(pitch => new ChartEvent(pitch.Moment.At, wording["chart-pitched"])),
            .. State.Dumps.Select(dump => new ChartEvent(
                dump.Moment.At,
                $"{wording["chart-dumped"]} {wording.InSentence(wording.Entry("choice.Sediment." + dump.What))}, {wording.Figures.Of(dump.Volume)}"
            )),
            .. State.DryHops.Select(hop => new ChartEvent(hop.Moment.At, $"{wording["chart-hopped"]} {hop.Material}")),
        ];

    private ChartWords Words =>
        new(
            wording[
                "chart-sentence",
                new("first", State.Gravities[0].Gravity),
                new("last", State.Gravities[^1].Gravity),
                new("at", State.Gravities[^1].Moment.At)
            ],
            wording["chart-read"],
            wording["chart-now"],
            wording["chart-no-signal"],
            wording["chart-table"],
            wording["chart-when"],
            wording["chart-doubtful"]
        )
        {
            Forecast = wording["chart-forecast"],
        };

    // What the forecast doubts is drawn, but the line leaves it out.
    private ChartReading Reading(GravityFact read) =>
        Forecast is not null && ForecastWords.DoubtOf(Forecast, read, wording) is { } why
            ? new ChartReading(read.Moment.At, ValueOf(read.Gravity), IsDoubtful: true, why)
            : new ChartReading(read.Moment.At, ValueOf(read.Gravity));

    private ChartForecast Shown((DateTimeOffset At, Band<DegreesPlato> Band) ahead) =>
        new(
            ahead.At,
            ValueOf(ahead.Band.Likely),
            (ValueOf(ahead.Band.Low80), ValueOf(ahead.Band.High80)),
            (ValueOf(ahead.Band.Low95), ValueOf(ahead.Band.High95))
        );

    private double ValueOf(DegreesPlato extract) => IsPlato ? extract.Value : Strength.GravityOf(extract).Value;

    private double ValueOf(SpecificGravity gravity) => IsPlato ? Strength.Plato(gravity) : gravity.Value;
}
