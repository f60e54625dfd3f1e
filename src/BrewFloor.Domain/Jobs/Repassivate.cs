using BrewFloor.Domain.House;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;

namespace BrewFloor.Domain.Jobs;

/// <summary>
/// The film that keeps stainless stainless: six months after air-drying, four when the tank was filled fewer than three times in its
/// first four; at once when it was hurt or never made; two weeks after taking over steel nobody knows (all common practice, no source).
/// </summary>
public static class Repassivate
{
    public const string Rule = "re-passivate";

    public static IEnumerable<Job> For(Tank tank, TankState state, HouseRules rules, DateTimeOffset now) =>
        tank is { IsStainless: true, IsRetired: false } && JobOf(state, rules) is { } job ? [job] : [];

    /// <summary>The day of the site's calendar on which the film is due again; null when none was made.</summary>
    public static DateOnly? DueOn(TankState state, HouseRules rules) =>
        state.Dried is { } dried
            ? rules
                .DateOf(dried.At)
                .AddMonths(IsSeldomUsed(state, rules) ? rules.SeldomUsedMonths : rules.PassivationMonths)
            : null;

    // Judged once: a filling after those months, or on their last day, changes nothing.
    private static bool IsSeldomUsed(TankState state, HouseRules rules) =>
        FillsInFirstMonths(state, rules) < rules.SeldomUsedFills;

    private static int FillsInFirstMonths(TankState state, HouseRules rules)
    {
        var judged = rules.DateOf(state.Dried!.Value.At).AddMonths(rules.SeldomUsedMonths);
        return state.FilledSinceDried.Count(at => rules.DateOf(at) < judged);
    }

    private static Job? JobOf(TankState state, HouseRules rules) =>
        state switch
        {
            { FilmHurt: [var hurt, ..] } => AtOnce(
                state,
                hurt.Moment,
                rules,
                [new("variant", "hurt"), new("by", hurt.Word), new("since", hurt.Moment.At)]
            ),
            { PassivationUnknown: { } takenOver } => OnDay(
                state,
                takenOver.Entry,
                rules.DateOf(takenOver.At).AddDays(rules.PassivationUnknownDays),
                rules,
                [new("variant", "unknown"), new("taken_over", takenOver.At)]
            ),
            { Dried: { } dried } => OnDay(
                state,
                dried.Entry,
                DueOn(state, rules)!.Value,
                rules,
                Film(state, dried, rules)
            ),
            { Begun: { } begun } => AtOnce(state, begun, rules, [new("variant", "never")]),
            _ => null,
        };

    private static Number[] Film(TankState state, Moment dried, HouseRules rules)
    {
        Number[] numbers = [new("dried", rules.DateOf(dried.At)), new("due", DueOn(state, rules))];
        return IsSeldomUsed(state, rules)
            ?
            [
                new("variant", "seldom"),
                .. numbers,
                new("fills", FillsInFirstMonths(state, rules)),
                new("months", rules.SeldomUsedMonths),
            ]
            : [.. numbers, new("months", rules.PassivationMonths)];
    }

    private static Job AtOnce(TankState state, Moment cause, HouseRules rules, Number[] because) =>
        new(
            Rule,
            state.Subject,
            cause.Entry,
            cause.At,
            rules.StartOf(rules.DateOf(cause.At).AddDays(rules.PassivationOverdueDays)),
            [.. because]
        );

    private static Job OnDay(TankState state, Guid cause, DateOnly due, HouseRules rules, Number[] because) =>
        new(
            Rule,
            state.Subject,
            cause,
            rules.StartOf(due),
            rules.StartOf(due.AddDays(rules.PassivationOverdueDays)),
            [.. because]
        );
}
