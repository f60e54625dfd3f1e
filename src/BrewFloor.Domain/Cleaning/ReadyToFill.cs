using BrewFloor.Brewing.Carbonation;
using BrewFloor.Domain.Batches;
using BrewFloor.Domain.House;
using BrewFloor.Domain.Jobs;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using UnitsNet;

namespace BrewFloor.Domain.Cleaning;

/// <summary>Whether wort or beer may run into a tank that holds none, in the order a person would mend it.</summary>
public static class ReadyToFill
{
    /// <param name="tank">The tank.</param>
    /// <param name="state">As it stands just before.</param>
    /// <param name="rules">Of the house.</param>
    /// <param name="at">When it runs in.</param>
    /// <param name="volume">In L, how much; for the pressure it would make in a shut tank.</param>
    /// <param name="brings">Allergens that run in with it: the same on the walls harms nobody more.</param>
    public static IEnumerable<Objection> Objections(
        Tank tank,
        TankState state,
        HouseRules rules,
        DateTimeOffset at,
        Volume volume,
        params IEnumerable<string> brings
    ) =>
        [
            .. Condition.OutOfService(tank, state),
            .. Condition.PartsOff(tank, state),
            .. Exposed(tank, state, [.. brings]),
            .. Steel(tank, state, rules, at),
            .. Sanitizing(tank, state, rules, at),
            .. VentClosed(tank, state, rules, volume),
        ];

    /// <summary>Beer may run in as soon as a way out is open: nothing stops it, cautions aside.</summary>
    public static bool IsReady(Tank tank, TankState state, HouseRules rules, DateTimeOffset at) =>
        Objections(tank, state with { Closure = Closure.Vented }, rules, at, Litres.None)
            .All(objection => objection.Level is Log.Level.Caution);

    private static IEnumerable<Objection> Exposed(Tank tank, TankState state, string[] brings)
    {
        foreach (var exposure in state.ExposedTo.Where(exposure => !tank.IsClearOf(exposure) && !IsBrought(exposure)))
        {
            Number[] numbers = [new("tank", tank.Code), new("since", exposure.Moment.At)];
            yield return exposure switch
            {
                { Kind: ExposureKind.MixedCulture } => Objection.Stop("exposed-mixed-culture", numbers),
                { What: "" } => Objection.Stop("exposed-allergen-unnamed", numbers),
                _ => Objection.Stop("exposed-allergen", [.. numbers, new("what", exposure.What)]),
            };
        }

        bool IsBrought(Exposure exposure) =>
            exposure is { Kind: ExposureKind.Allergen, What: not "" }
            && brings.Contains(exposure.What, StringComparer.OrdinalIgnoreCase);
    }

    private static IEnumerable<Objection> Steel(Tank tank, TankState state, HouseRules rules, DateTimeOffset at)
    {
        if (!tank.IsStainless)
        {
            yield break;
        }

        var name = new Number("tank", tank.Code);
        if (state.FilmHurt is [var hurt, ..])
        {
            yield return Objection.Stop("film-hurt", name, new("by", hurt.Word), new("since", hurt.Moment.At));
        }
        else if (state.PassivationUnknown is { } takenOver)
        {
            yield return Objection.Caution("passivation-unknown", name, new("taken_over", takenOver.At));
        }
        else if (state.Dried is null)
        {
            yield return Objection.Stop("never-passivated", name);
        }
        else if (Repassivate.DueOn(state, rules) is { } due && rules.DateOf(at) > due)
        {
            yield return Objection.Caution(
                "passivation-overdue",
                name,
                new("dried", rules.DateOf(state.Dried.Value.At)),
                new("due", due)
            );
        }
    }

    private static IEnumerable<Objection> Sanitizing(Tank tank, TankState state, HouseRules rules, DateTimeOffset at)
    {
        var name = new Number("tank", tank.Code);
        if (state.Contents is { What: Holding.Sanitizer, Since: var since })
        {
            yield return Objection.Stop("sanitizer-in", name, new("since", since.At));
        }
        else if (state.Sanitized is not { } drained || state.Soil is not Soil.Sanitized)
        {
            yield return Objection.Stop("not-sanitized", name);
        }
        else if (Cleaning.Sanitizing.IsSpoiledByOpening(tank, state))
        {
            yield return Objection.Stop(
                "opened-since-sanitized",
                name,
                new("drained", drained.At),
                new("opened", state.OpenedSinceDrained!.Value.At)
            );
        }
        else if (state.SanitizedUntil(rules) is { } until && at > until)
        {
            yield return Objection.Stop("sanitizing-lapsed", name, new("drained", drained.At), new("until", until));
        }
    }

    /// <summary>Stop!: no way out for the gas that what runs in takes the place of, also where the tank holds the same beer.</summary>
    public static IEnumerable<Objection> VentClosed(Tank tank, TankState state, HouseRules rules, Volume volume)
    {
        if (!state.IsShut)
        {
            yield break;
        }

        Number[] numbers = [new("tank", tank.Code), new("volume", volume)];
        yield return PressedTo(tank, state, rules, volume) is { } absolute
            ? Objection.HardStop("vent-closed", [.. numbers, new("absolute", absolute)])
            : Objection.HardStop("vent-closed-no-room", numbers);
    }

    /// <summary>What the gas of a shut tank is pressed to, kPa absolute; null: there is no room for it.</summary>
    /// <remarks>
    /// Boyle's law: 19 L into 25 L at the air's pressure end at 4.2 bar absolute (check TR-03). It takes a pressure nobody knows for
    /// none, and the CO2 that dissolves for none: it says how bad, never that it is harmless.
    /// </remarks>
    private static Pressure? PressedTo(Tank tank, TankState state, HouseRules rules, Volume volume)
    {
        var air = Atmosphere.At(rules.Altitude).Value;
        var before = air.Kilopascals + (state.PressureNow() ?? Pressures.None).Kilopascals;
        var room = tank.Total.Liters - (state.HoldsBeer ? state.Contents.Volume?.Liters ?? 0 : 0);
        return volume.Liters < room ? Pressure.FromKilopascals(before * room / (room - volume.Liters)) : null;
    }
}
