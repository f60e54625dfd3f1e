using BrewFloor.Brewing.Carbonation;
using BrewFloor.Brewing.Extract;
using BrewFloor.Brewing.Heat;
using BrewFloor.Domain.Batches;
using BrewFloor.Domain.House;
using BrewFloor.Domain.Log;
using UnitsNet;

namespace BrewFloor.Domain.Tanks;

/// <summary>What speaks against cooling beer: the vacuum in a shut tank, and ice.</summary>
public static class Crash
{
    /// <summary>Ours: a jacket is colder than the beer, and ice begins at the wall.</summary>
    private const double KelvinAboveIce = 1.5;

    /// <summary>The freezing rule's constant alone: beer of no alcohol and no extract (see <see cref="BeerFreezing"/>).</summary>
    private const double NothingInIt = -0.2;

    /// <summary>
    /// Caution: set point down on a shut tank whose pressure ends below that of the air, with the end and the CO2 that
    /// holds it at the air's; without numbers where litres, temperature or pressure aren't known.
    /// </summary>
    /// <remarks>The computation is <see cref="SealedCrash"/>; it warns, and no number of it takes the warning back.</remarks>
    public static IEnumerable<Objection> Vacuum(Tank tank, TankState state, Temperature set, HouseRules rules)
    {
        var from = state.Temperature?.Value;
        if (!state.IsShut || !state.HoldsBeer || from?.DegreesCelsius <= set.DegreesCelsius)
        {
            yield break;
        }

        if (state.PressureNow() is not { } gauge)
        {
            yield return Objection.Caution("crash-pressure-unknown", new("tank", tank.Code), new("set", set));
            yield break;
        }

        var air = Atmosphere.At(rules.Altitude).Value;
        if (Sealed(tank, state, gauge + air) is not { } beer)
        {
            yield return Objection.Caution("crash-vacuum-unknown", new("tank", tank.Code), new("set", set));
            yield break;
        }

        // The solubility of CO2 ends at 0 °C; a colder beer ends a little lower.
        var to = Temperature.FromDegreesCelsius(Math.Max(0, set.DegreesCelsius));
        if (!SealedCrash.EndOf(beer, to).Gives(out var end) || !SealedCrash.ToHold(beer, to, air).Gives(out var needed))
        {
            yield return Objection.Caution("crash-vacuum-unknown", new("tank", tank.Code), new("set", set));
        }
        else if (end.Settled < air)
        {
            yield return Objection.Caution(
                "crash-vacuum",
                new("tank", tank.Code),
                new("set", set),
                new("end_absolute", end.Settled),
                new("needed", needed)
            );
        }
    }

    /// <summary>
    /// Stop: colder than 1.5 K above where this beer freezes, by its original and its latest gravity. Caution when the
    /// original gravity isn't known and the set point is colder than 1.5 K above where almost water would freeze.
    /// </summary>
    public static IEnumerable<Objection> Ice(Tank tank, BatchState batch, Temperature set)
    {
        var known = FreezingOf(batch);
        var coldest = (known?.DegreesCelsius ?? NothingInIt) + KelvinAboveIce;
        if (set.DegreesCelsius >= coldest)
        {
            yield break;
        }

        Number[] numbers =
        [
            new("tank", tank.Code),
            new("set", set),
            new("coldest", Temperature.FromDegreesCelsius(coldest)),
        ];
        yield return known is null
            ? Objection.Caution("freezing-unknown", numbers)
            : Objection.Stop("would-freeze", numbers);
    }

    /// <summary>By the alcohol there is now: beer that still ferments freezes sooner than it will in the end.</summary>
    private static Temperature? FreezingOf(BatchState batch)
    {
        if (batch.OriginalGravity is not { } original || !DegreesPlato.From(original).Gives(out var extract))
        {
            return null;
        }

        var alcohol = Strength.Of(batch) is { IsDone: true } strength
            ? strength.Value.AlcoholByWeight
            : MassFraction.FromPercent(0);
        return BeerFreezing.PointOf(alcohol, extract).Gives(out var point) ? point : null;
    }

    private static SealedTank? Sealed(Tank tank, TankState state, Pressure absolute) =>
        state is { Contents.Volume: { } beer, Temperature: { } temperature }
            ? new(beer, Volume.FromLiters(Math.Max(0, tank.Total.Liters - beer.Liters)), temperature.Value, absolute)
            : null;
}
