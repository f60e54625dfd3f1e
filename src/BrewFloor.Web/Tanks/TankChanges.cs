using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Web.Shell;

namespace BrewFloor.Web.Tanks;

/// <summary>What an edit of a tank changed, a line each: before and after.</summary>
public static class TankChanges
{
    public static IEnumerable<string> Between(Tank? before, Tank after, Wording words) =>
        before is null
            ? [words["change-added"]]
            : Shown(before, words)
                .Zip(Shown(after, words))
                .Where(pair => !string.Equals(pair.First.Value, pair.Second.Value, StringComparison.Ordinal))
                .Select(pair =>
                    words[
                        "change-line",
                        new("what", pair.First.Label),
                        new("before", pair.First.Value),
                        new("after", pair.Second.Value)
                    ]
                )
                .Concat(OfPorts(before, after, words));

    private static IEnumerable<string> OfPorts(Tank before, Tank after, Wording words) =>
        from number in before.Ports.Concat(after.Ports).Select(port => port.Number).Distinct().Order()
        let was = before.Port(number)
        let now = after.Port(number)
        where was != now
        select words[
            "change-line",
            new("what", words["port-numbered", new Number("port", number)]),
            new("before", was is null ? words["change-none"] : PortWords.All(was, words)),
            new("after", now is null ? words["change-none"] : PortWords.All(now, words))
        ];

    private static IEnumerable<(string Label, string Value)> Shown(Tank tank, Wording words)
    {
        var none = words["change-none"];
        var f = words.Figures;
        (string Field, string Value)[] values =
        [
            ("tank-name", tank.Name ?? none),
            ("type", words.Entry("choice.TankType." + tank.Type)),
            ("material", words.Entry("choice.Material." + tank.Material)),
            ("highest-cleaning", f.Of(tank.HighestCleaning)),
            ("working", f.Of(tank.Working)),
            ("diameter", f.Of(tank.Total)),
            ("headspace", $"{tank.HeadspaceWanted * 100:0.#} %"),
            ("rating", tank.Rating is { } rating ? f.Of(rating.Highest) : none),
            ("relief", tank.Relief is { } relief ? $"{f.Of(relief.Setting)}, {f.DayOfYear(relief.TestedOn)}" : none),
            ("cooling", words.Entry("choice.Cooling." + tank.Cooling)),
            ("heating", words.Entry("choice.Heating." + tank.Heating)),
            ("loan-until", tank.OnLoanUntil is { } until ? f.DayOfYear(until) : none),
        ];
        return
        [
            .. values.Select(value =>
                (value.Field is "diameter" ? words["fact-total"] : words.Entry("field." + value.Field), value.Value)
            ),
            (words["change-retired"], tank.RetiredOn is { } on ? f.DayOfYear(on) : none),
        ];
    }
}
