using BrewFloor.Domain.Log;
using BrewFloor.Web.Drawing;
using BrewFloor.Web.Shell;
using UnitsNet;

namespace BrewFloor.Web.Tanks;

/// <summary>What stands on the tank's drawing where it is measured, top to bottom as in the tank: five at most.</summary>
public static class TankReadOuts
{
    public static IReadOnlyList<ReadOut> Of(Bay bay, Wording words) =>
        [
            .. new[]
            {
                Gauge(bay, words),
                Level(bay, words),
                Gravity(bay, words),
                Temperature(bay, words),
                Sediment(bay, words),
            }.OfType<ReadOut>(),
        ];

    private static ReadOut? Gauge(Bay bay, Wording words) =>
        bay.Tank.PressureLimit is { } limit
            ? new(
                ReadOutPlace.Gauge,
                bay.State is { IsPressureInDoubt: false, Pressure.Moment: var known }
                    ? words["read-pressure-at", new Number("at", known.At)]
                    : words["read-pressure"],
                bay.State is { IsPressureInDoubt: false, Pressure: { } read }
                    ? words.Figures.Of(read.Value)
                    : words["bay-unknown"],
                words["read-stop", new Number("limit", limit)]
            )
            : null;

    private static ReadOut? Level(Bay bay, Wording words) =>
        !bay.State.HoldsBeer ? null
        : bay.State.Contents.Volume is { } volume
            ? new(
                ReadOutPlace.Level,
                words["read-volume"],
                words.Figures.Of(volume),
                words["read-free", new Number("share", words.Figures.Share(1 - (volume / bay.Tank.Total)))]
            )
        : new(ReadOutPlace.Level, words["read-volume"], words["volume-unknown"], "");

    private static ReadOut? Gravity(Bay bay, Wording words) =>
        bay is { State.HoldsBeer: true, BatchState: { Gravities: { Count: > 0 } all } batch }
            ? new(
                ReadOutPlace.Beer,
                words["read-gravity", new Number("at", all[^1].Moment.At)],
                words.Figures.Of(all[^1].Gravity),
                batch.OriginalGravity is { } original ? words["read-from", new Number("original", original)] : ""
            )
            : null;

    private static ReadOut? Temperature(Bay bay, Wording words) =>
        bay.State is { HoldsBeer: true, Temperature: { } read }
            ? new(
                ReadOutPlace.Thermowell,
                words["read-temperature", new Number("at", read.Moment.At)],
                words.Figures.Of(read.Value),
                bay.State.TemperatureSet is { } set ? words["read-set", new Number("set", set.Value)] : ""
            )
            : null;

    private static ReadOut? Sediment(Bay bay, Wording words) =>
        bay.State.HoldsBeer && bay.Condition.Sediment is { Count: > 0 } layers
            ? new(
                ReadOutPlace.Sediment,
                words.Entry("choice.Sediment." + layers[^1].Kind),
                words.Figures.Of(Volume.FromLiters(layers.Sum(layer => layer.Volume.Liters))),
                words["read-estimated"]
            )
            : null;
}
