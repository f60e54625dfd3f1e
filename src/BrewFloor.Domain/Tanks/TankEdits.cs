using System.Text.RegularExpressions;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.People;
using UnitsNet;

namespace BrewFloor.Domain.Tanks;

/// <summary>What speaks against adding a tank or changing what it is. A thing is edited or not: every objection is impossible.</summary>
/// <remarks>That a code is never used twice, retired tanks included and without case, is for the store to say.</remarks>
public static partial class TankEdits
{
    private static readonly Number[] CodeForm = [new("from", 1), new("to", 6)];

    /// <summary>Against a tank that joins the inventory.</summary>
    public static IEnumerable<Objection> New(Tank tank, Role role) =>
        [.. ByItself(tank), .. ByOthersThanTheOwner(before: null, tank, role)];

    /// <summary>Against changing a tank, as it stands now. Judged under the tank's lock.</summary>
    public static IEnumerable<Objection> Objections(Tank before, Tank after, TankState state, Role role) =>
        [
            .. ByItself(after),
            .. ByOthersThanTheOwner(before, after, role),
            .. ByPressure(before, after, state),
            .. ByContents(before, after, state),
            .. PortEdits.ByFittings(after, state),
        ];

    private static IEnumerable<Objection> ByItself(Tank tank)
    {
        if (!Code().IsMatch(tank.Code))
        {
            yield return Objection.Impossible("tank-code", [new("tank", tank.Code), .. CodeForm]);
        }

        if (tank.Working.Liters <= 0 || tank.Working.Liters > tank.Total.Liters)
        {
            yield return Objection.Impossible(
                "working-over-total",
                new("working", tank.Working),
                new("total", tank.Total)
            );
        }

        if (tank.HeadspaceWanted is not (>= 0 and <= 0.5))
        {
            yield return Objection.Impossible("headspace-share", new("from", 0), new("to", 50));
        }

        if (tank.OnLoanFrom > tank.OnLoanUntil)
        {
            yield return Objection.Impossible("loan-ends-first", new Number("until", tank.OnLoanUntil));
        }

        foreach (var objection in ByRating(tank).Concat(PortEdits.ByThemselves(tank)))
        {
            yield return objection;
        }
    }

    private static IEnumerable<Objection> ByRating(Tank tank)
    {
        if (tank.Rating is { } rating && !Enum.IsDefined(rating.Source))
        {
            yield return Objection.Impossible("rating-without-source", new Number("rating", rating.Highest));
        }

        foreach (var pressure in (Pressure?[])[tank.Rating?.Highest, tank.Relief?.Setting])
        {
            if (pressure is { Kilopascals: not > 0 })
            {
                yield return Objection.Impossible("rating-not-above-nothing", new Number("rating", pressure));
            }
        }

        if (tank is { Rating: { } plate, Relief: { } relief } && relief.Setting > plate.Highest)
        {
            yield return Objection.Impossible(
                "relief-above-rating",
                new("setting", relief.Setting),
                new("rating", plate.Highest)
            );
        }
    }

    /// <summary>The rating, and what the relief valve is set to: both say what the vessel is trusted with.</summary>
    private static IEnumerable<Objection> ByOthersThanTheOwner(Tank? before, Tank after, Role role)
    {
        var isSame = after.Rating == before?.Rating && Equals(after.Relief?.Setting, before?.Relief?.Setting);
        if (role < Role.Owner && !isSame)
        {
            yield return Objection.Impossible("rating-is-the-owners", new Number("tank", after.Code));
        }
    }

    private static IEnumerable<Objection> ByPressure(Tank before, Tank after, TankState state)
    {
        var isRetired = after.IsRetired && !before.IsRetired;
        if (!isRetired && !IsTrustedWithLess(before, after))
        {
            yield break;
        }

        if (state.PressureNow() is not { } pressure)
        {
            yield return Objection.Impossible("read-pressure-first", new Number("tank", after.Code));
        }
        else if (pressure > Pressures.None && (isRetired || pressure > LimitOf(before, after)))
        {
            yield return Objection.Impossible("holds-pressure", new("tank", after.Code), new("pressure", pressure));
        }
        else if (state.PressureSet?.Value is { } set && set > LimitOf(before, after))
        {
            yield return Objection.Impossible("set-above-rating", new("tank", after.Code), new("set", set));
        }
    }

    private static IEnumerable<Objection> ByContents(Tank before, Tank after, TankState state)
    {
        if (after.IsRetired && !before.IsRetired && state.Contents.What is not Holding.Nothing)
        {
            yield return Objection.Impossible("retiring-full", new Number("tank", after.Code));
        }

        if (state.Contents.Volume is not { } held)
        {
            yield break;
        }

        if (after.Total.Liters < held.Liters && after.Total.Liters < before.Total.Liters)
        {
            yield return Smaller(after.Total, held);
        }
        else if (after.Working.Liters < held.Liters && after.Working.Liters < before.Working.Liters)
        {
            yield return Smaller(after.Working, held);
        }
    }

    private static Objection Smaller(Volume size, Volume held) =>
        Objection.Impossible("smaller-than-contents", new("size", size), new("volume", held));

    private static bool IsTrustedWithLess(Tank before, Tank after) =>
        IsLess(before.Rating?.Highest, after.Rating?.Highest) || IsLess(before.Relief?.Setting, after.Relief?.Setting);

    private static bool IsLess(Pressure? before, Pressure? after) =>
        before is { } was && (after is not { } now || now < was);

    // A vessel that never had a relief valve in the inventory is held against its rating alone.
    private static Pressure LimitOf(Tank before, Tank after) =>
        after.PressureLimit ?? (before.Relief is null ? after.Rating?.Highest : null) ?? Pressures.None;

    [GeneratedRegex(@"^[A-Z0-9-]{1,6}\z", RegexOptions.CultureInvariant | RegexOptions.NonBacktracking)]
    private static partial Regex Code();
}
