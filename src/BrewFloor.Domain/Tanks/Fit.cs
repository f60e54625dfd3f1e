using BrewFloor.Domain.Log;
using UnitsNet;

namespace BrewFloor.Domain.Tanks;

/// <summary>Whether a volume fits a tank: to the brim, to the working line, and with room for foam.</summary>
public static class Fit
{
    /// <summary>All that speaks against filling a tank up to <paramref name="full"/> L, the impossible first.</summary>
    public static IEnumerable<Objection> Objections(Tank tank, Volume full)
    {
        if (full.Liters > tank.Total.Liters)
        {
            yield return OverTotal(tank, full);
            yield break; // the finer lines are crossed with it
        }

        foreach (var caution in Cautions(tank, full))
        {
            yield return caution;
        }
    }

    /// <summary>Impossible: a level that the tank's sizes or marks don't know.</summary>
    public static IEnumerable<Objection> LevelOutside(Tank tank, Length? level)
    {
        if (level is { } read && tank.Strapping.VolumeAt(read).Refusal is not null)
        {
            yield return Objection.Impossible(
                "level-outside-tank",
                new("tank", tank.Code),
                new("level", read),
                new("highest", tank.Strapping.Height)
            );
        }
    }

    public static Objection OverTotal(Tank tank, Volume full) =>
        Objection.Impossible("over-total", new("tank", tank.Code), new("volume", full), new("total", tank.Total));

    private static IEnumerable<Objection> Cautions(Tank tank, Volume full)
    {
        if (full.Liters > tank.Working.Liters)
        {
            yield return Objection.Caution(
                "over-working",
                new("tank", tank.Code),
                new("volume", full),
                new("working", tank.Working)
            );
        }

        var (headspace, wanted) = (tank.Total.Liters - full.Liters, tank.HeadspaceWanted * tank.Total.Liters);
        if (headspace < wanted)
        {
            yield return Objection.Caution(
                "little-headspace",
                new("tank", tank.Code),
                new("headspace", Volume.FromLiters(headspace)),
                new("wanted", Volume.FromLiters(wanted))
            );
        }
    }
}
