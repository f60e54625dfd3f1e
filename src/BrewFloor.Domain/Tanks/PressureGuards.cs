using BrewFloor.Domain.House;
using BrewFloor.Domain.Log;
using UnitsNet;

namespace BrewFloor.Domain.Tanks;

/// <summary>What speaks against pressure in a vessel, and against opening one that may be under it.</summary>
/// <remarks>
/// The plate, the manual, local codes and licensed practice come first. Without a rating and a relief valve with its setting and
/// the day of its test there is no pressure at all.
/// </remarks>
public static class PressureGuards
{
    // A gauge of a cellar ends before; below it there is no pressure left to take away.
    private static readonly Pressure Lowest = Pressure.FromKilopascals(-101.325);

    private static readonly Pressure Highest = Pressure.FromKilopascals(1000);

    /// <summary>Stop!: the lid, a port, a part or a seal comes off, or air goes in, while pressure is above 0 or unknown.</summary>
    public static IEnumerable<Objection> Opening(Tank tank, TankState state)
    {
        if (state.PressureNow() is not { } pressure)
        {
            yield return Unknown(tank);
        }
        else if (pressure > Pressures.None)
        {
            yield return Objection.HardStop("under-pressure", new("tank", tank.Code), new("pressure", pressure));
        }
    }

    /// <summary>Everything against raising the pressure or closing the way out. Reading, venting and lowering ask nobody.</summary>
    /// <param name="tank">The vessel, with its rating and relief valve.</param>
    /// <param name="state">As it stands.</param>
    /// <param name="rules">Of the house.</param>
    /// <param name="at">When.</param>
    /// <param name="to">The set point, kPa gauge; null: what it stands under now, if known.</param>
    public static IEnumerable<Objection> Raising(
        Tank tank,
        TankState state,
        HouseRules rules,
        DateTimeOffset at,
        Pressure? to
    ) =>
        [
            .. Condition.OutOfService(tank, state),
            .. Vessel(tank, state),
            .. Relief(tank, state, rules, at),
            .. Fittings.ReliefValveOff(tank, state),
            .. (to ?? state.PressureNow()) is { } pressure ? Limits(tank, pressure, rules) : [],
            .. Condition.PartsOff(tank, state),
            .. Condition.NotTightForPressure(tank, state),
        ];

    /// <summary>Impossible: no gauge shows that, so it was another unit.</summary>
    public static IEnumerable<Objection> Unreadable(Pressure pressure, Pressure? lowest = null)
    {
        var from = lowest ?? Lowest;
        if (!(pressure >= from && pressure <= Highest))
        {
            yield return Objection.Impossible(
                "pressure-unreadable",
                new("pressure", pressure),
                new("from", from),
                new("to", Highest)
            );
        }
    }

    /// <summary>Nobody knows whether the tank is under pressure.</summary>
    public static Objection Unknown(Tank tank) => Objection.HardStop("pressure-unknown", new Number("tank", tank.Code));

    /// <summary>The lower of rating and relief valve setting, or whichever is known, in kPa gauge; null: neither.</summary>
    public static Pressure? LowestLimit(Tank tank) =>
        tank.PressureLimit ?? tank.Rating?.Highest ?? tank.Relief?.Setting;

    /// <summary>The day the relief valve's next test is due (CP; local codes may want it sooner); null without a valve.</summary>
    public static DateOnly? ReliefTestDueOn(Tank tank, TankState state, HouseRules rules) =>
        tank.Relief is { } relief ? TestedOn(relief, state, rules).AddMonths(rules.ReliefTestMonths) : null;

    /// <summary>The last test failed, and the inventory knows no later one.</summary>
    public static bool HasReliefFailed(Tank tank, TankState state, HouseRules rules) =>
        state is { ReliefFailed: true, ReliefTested: { } test }
        && tank.Relief is { } relief
        && rules.DateOf(test.At) >= relief.TestedOn;

    private static IEnumerable<Objection> Vessel(Tank tank, TankState state)
    {
        if (tank.Rating is null)
        {
            yield return Objection.HardStop("no-rating", new Number("tank", tank.Code));
        }

        if (state is { PressureTestFailed: true, PressureTested: { } test })
        {
            yield return Objection.HardStop("pressure-test-failed", new("tank", tank.Code), new("tested", test.At));
        }
    }

    private static IEnumerable<Objection> Relief(Tank tank, TankState state, HouseRules rules, DateTimeOffset at)
    {
        if (tank.Relief is not { } relief)
        {
            yield return Objection.HardStop("no-relief-valve", new Number("tank", tank.Code));
            yield break;
        }

        Number[] numbers = [new("tank", tank.Code), new("tested", TestedOn(relief, state, rules))];
        if (HasReliefFailed(tank, state, rules))
        {
            yield return Objection.HardStop("relief-valve-failed", numbers);
        }
        else if (ReliefTestDueOn(tank, state, rules) is { } due && rules.DateOf(at) > due)
        {
            yield return Objection.HardStop("relief-test-overdue", [.. numbers, new("due", due)]);
        }
    }

    private static IEnumerable<Objection> Limits(Tank tank, Pressure pressure, HouseRules rules)
    {
        if (LowestLimit(tank) is not { } limit)
        {
            yield break;
        }

        Number[] numbers = [new("tank", tank.Code), new("pressure", pressure), new("limit", limit)];
        if (pressure > limit)
        {
            yield return Objection.HardStop("over-pressure-limit", numbers);
        }
        else if (pressure.Kilopascals > rules.PressureCautionShare * limit.Kilopascals)
        {
            yield return Objection.Caution("near-pressure-limit", numbers);
        }
    }

    private static DateOnly TestedOn(ReliefValve relief, TankState state, HouseRules rules) =>
        state.ReliefTested is { } test && rules.DateOf(test.At) is var day && day > relief.TestedOn
            ? day
            : relief.TestedOn;
}
