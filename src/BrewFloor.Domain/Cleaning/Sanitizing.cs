using BrewFloor.Domain.House;
using BrewFloor.Domain.Tanks;

namespace BrewFloor.Domain.Cleaning;

/// <summary>How long a sanitizing lasts. CP: no published source gives the hours.</summary>
/// <remarks>
/// Each stretch since draining uses up a share of the limit of its own closure, and at 1 the sanitizing has lapsed. Vented under
/// carbon dioxide is free while it lies within the last hours before the question, and counts as open before them: such a
/// stretch is used up later than it passes, and by no other rule.
/// </remarks>
public static class Sanitizing
{
    private const double AllUsed = 1 + 1e-12; // thirds don't add up to 1 in binary

    /// <summary>The share used up at a moment: 0 and more, never less than before.</summary>
    public static double SharesUsed(this TankState tank, HouseRules rules, DateTimeOffset at) =>
        UsedBefore(tank.StoodSinceDrained, rules)
        + Uses(tank, rules).Sum(use => Share(Earlier(use.Until, at) - use.From, use.Limit));

    /// <summary>Up to when the shares are no more than 1, if it stays shut as it is now; inclusive, to the microsecond. Null: nothing is sanitized.</summary>
    public static DateTimeOffset? SanitizedUntil(this TankState tank, HouseRules rules)
    {
        if (tank.Sanitized is null || tank.StretchesSinceDrained is [])
        {
            return null;
        }

        var uses = Uses(tank, rules).ToArray();
        var used = UsedBefore(tank.StoodSinceDrained, rules);
        DateTimeOffset[] edges = [.. uses.SelectMany(use => new[] { use.From, use.Until }).Distinct().Order()];
        for (var i = 0; ; i++) // ends: the last stretch is open-ended and uses something up
        {
            var (from, ticks) = (edges[i], (edges[i + 1] - edges[i]).Ticks);
            var perTick = uses.Where(use => use.From <= from && use.Until > from).Sum(use => 1.0 / use.Limit.Ticks);
            if (perTick > 0 && used + (perTick * ticks) > AllUsed)
            {
                var left = Math.Max(0, 1 - used) / perTick;
                return from.AddMicroseconds(Math.Round(left / TimeSpan.TicksPerMicrosecond));
            }

            used += perTick * ticks;
        }
    }

    /// <summary>The soil of a tank now: a sanitizing that lapsed, or a closed type that was opened, leaves it clean.</summary>
    public static Soil SoilNow(Tank tank, TankState state, HouseRules rules, DateTimeOffset now) =>
        state.Soil is not Soil.Sanitized ? state.Soil
        : !IsSpoiledByOpening(tank, state) && now <= state.SanitizedUntil(rules) ? Soil.Sanitized
        : Soil.Clean;

    /// <summary>A type whose lid is a seal was opened since it was drained.</summary>
    public static bool IsSpoiledByOpening(Tank tank, TankState state) =>
        !tank.IsOpenType && state.OpenedSinceDrained is not null;

    private static IEnumerable<Use> Uses(TankState tank, HouseRules rules)
    {
        var stretches = tank.StretchesSinceDrained;
        for (var i = 0; i < stretches.Count; i++)
        {
            var (closure, gas, from) = stretches[i];
            var until = i + 1 < stretches.Count ? stretches[i + 1].From : DateTimeOffset.MaxValue;
            var isLater = closure is Closure.Vented && gas is Gas.CarbonDioxide;
            var limit = closure switch
            {
                Closure.Sealed => rules.SanitizedSealed,
                Closure.Closed => rules.SanitizedClosed,
                _ => rules.SanitizedOpen,
            };
            yield return isLater
                ? new(from + rules.VentedUnderCarbonDioxide, Later(until, rules.VentedUnderCarbonDioxide), limit)
                : new(from, until, limit);
        }
    }

    private static double UsedBefore(StoodShut stood, HouseRules rules) =>
        Share(stood.Open, rules.SanitizedOpen)
        + Share(stood.Closed, rules.SanitizedClosed)
        + Share(stood.Sealed, rules.SanitizedSealed);

    private static double Share(TimeSpan time, TimeSpan limit) =>
        time <= TimeSpan.Zero ? 0 : (double)time.Ticks / limit.Ticks;

    private static DateTimeOffset Earlier(DateTimeOffset one, DateTimeOffset other) => one < other ? one : other;

    private static DateTimeOffset Later(DateTimeOffset until, TimeSpan by) =>
        until == DateTimeOffset.MaxValue ? until : until + by;

    // From when to when a limit is being used up.
    private readonly record struct Use(DateTimeOffset From, DateTimeOffset Until, TimeSpan Limit);
}
