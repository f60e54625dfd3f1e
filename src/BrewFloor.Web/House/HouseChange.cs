using BrewFloor.Domain.House;
using BrewFloor.Domain.Log;
using BrewFloor.Store.House;
using BrewFloor.Web.Shell;

namespace BrewFloor.Web.House;

/// <summary>One change of the house rules, in words.</summary>
internal sealed record HouseChange(string Head, IReadOnlyList<string> Lines)
{
    public static HouseChange Of(HouseVersion now, HouseRules before, Wording wording) =>
        new(
            wording["house-history-line", new("at", now.At), new("name", now.By ?? "")],
            [
                .. HouseNumbers
                    .Between(before, now.Rules)
                    .Select(number =>
                        wording[
                            "house-change",
                            new("rule", wording["house-name-" + number.Key]),
                            new("was", number.Text(before)),
                            new("is", number.Text(now.Rules)),
                            new("unit", wording["house-in-" + number.Unit])
                        ]
                    ),
                .. Switched("house-silenced", now.Rules, before, wording),
                .. Switched("house-heard-again", before, now.Rules, wording),
                .. Counting(now.Rules, before, wording),
            ]
        );

    private static IEnumerable<string> Switched(string key, HouseRules with, HouseRules without, Wording wording) =>
        with
            .SilentCautions.Except(without.SilentCautions, StringComparer.Ordinal)
            .Select(code => wording[key, new Number("caution", wording.Head(Objection.Caution(code)))]);

    private static IEnumerable<string> Counting(HouseRules now, HouseRules before, Wording wording)
    {
        if (now.CountsCultures != before.CountsCultures)
        {
            yield return now.CountsCultures ? wording["house-counts-on"] : wording["house-counts-off"];
        }
    }
}
