using BrewFloor.Domain.House;
using BrewFloor.Domain.Yeast;
using BrewFloor.Web.Jobs;
using BrewFloor.Web.Shell;

namespace BrewFloor.Web.Yeast;

/// <summary>A culture as a page shows it, at a moment.</summary>
public sealed record ShownCulture(Culture Thing, CultureState State, HouseRules Rules, DateTimeOffset Now)
{
    /// <summary>The most pressing first.</summary>
    public IReadOnlyList<ShownJob> Jobs { get; init; } = [];

    public ShownJob? MostPressing => Jobs.Count > 0 ? Jobs[0] : null;
}

/// <summary>What a page says of a culture, in words and figures.</summary>
public static class YeastWords
{
    public static string Name(ShownCulture culture, Wording words) =>
        words["yeast-name", new("number", culture.Thing.Number), new("strain", culture.Thing.Strain)];

    public static string Generation(ShownCulture culture) =>
        culture.State.IsGenerationAtLeast ? $"{culture.State.Generation}+" : $"{culture.State.Generation}";

    public static string Age(ShownCulture culture, Wording words) =>
        culture.State.Made is not { } made ? words["bay-unknown"]
        : DaysSince(culture, made.At) is var days && days == 1 ? words["yeast-one-day"]
        : words["yeast-days", new Domain.Log.Number("days", days)];

    /// <summary>Counted, reckoned as a range, or not known; never one number where there is a range.</summary>
    public static string Viability(ShownCulture culture, Wording words)
    {
        if (Domain.Yeast.Viability.Now(culture.Thing, culture.State, culture.Rules, culture.Now) is { } range)
        {
            return words["yeast-alive", new("from", $"{range.Low.Percent:0}"), new("to", $"{range.High.Percent:0}")];
        }

        return culture.State.Counts is { Count: > 0 } counts
            ? words["yeast-counted", new Domain.Log.Number("share", $"{counts[^1].Viability * 100:0}")]
            : words["yeast-alive-unknown"];
    }

    /// <summary>The line of a culture that is gone: which generation it was, from when, and what became of it.</summary>
    public static string Past(ShownCulture culture, Wording words) =>
        string.Join(
            " · ",
            new[]
            {
                words["generation-short", new Domain.Log.Number("generation", Generation(culture))],
                culture.State.Made is { } made
                    ? words["yeast-made", new Domain.Log.Number("on", culture.Rules.DateOf(made.At))]
                    : null,
                WhatBecame(culture, words),
            }.OfType<string>()
        );

    public static IEnumerable<(string Key, string Value)> Facts(ShownCulture culture, Wording words)
    {
        yield return ("amount", words.Figures.Of(culture.State.Amount));
        yield return ("generation", Generation(culture));
        yield return ("age", Age(culture, words));
        yield return ("viability", Viability(culture, words));
        if (culture.State.StoredAt is { } stored)
        {
            yield return ("stored", words.Figures.Of(stored));
        }

        if (culture.Thing.UseBy is { } useBy)
        {
            yield return ("use-by", words.Figures.DayOfYear(useBy));
        }
    }

    private static string WhatBecame(ShownCulture culture, Wording words) =>
        culture.State.Discarded is { } discarded
            ? words["yeast-discarded", new Domain.Log.Number("at", discarded.At)]
            : words["yeast-used-up"];

    private static int DaysSince(ShownCulture culture, DateTimeOffset at) =>
        culture.Rules.DateOf(culture.Now).DayNumber - culture.Rules.DateOf(at).DayNumber;
}
