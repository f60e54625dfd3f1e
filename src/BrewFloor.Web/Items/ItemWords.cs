using BrewFloor.Domain.Items;
using BrewFloor.Web.Jobs;
using BrewFloor.Web.Shell;

namespace BrewFloor.Web.Items;

/// <summary>An item as a page shows it.</summary>
public sealed record ShownItem(Item Thing, ItemState State, DateTimeOffset Now)
{
    /// <summary>The most pressing first.</summary>
    public IReadOnlyList<ShownJob> Jobs { get; init; } = [];

    public ShownJob? MostPressing => Jobs.Count > 0 ? Jobs[0] : null;
}

/// <summary>What a page says of an item, in words and figures.</summary>
public static class ItemWords
{
    /// <summary>The line of a list to choose from: name, and what is left.</summary>
    public static string Choice((Item Thing, ItemState State) item, Wording words) =>
        words.Entry("choice.item", new("name", item.Thing.Name), new("left", Left(item.State, words)));

    public static string Left(ItemState state, Wording words) =>
        state.Amount is { } amount ? words.Figures.Of(amount) : words.Entry("item.not-counted");

    public static IEnumerable<(string Key, string Value)> Facts(ShownItem item, Wording words)
    {
        yield return ("left", Left(item.State, words));
        if (item.Thing.ReorderAt is { } level)
        {
            yield return ("reorder-at", words.Figures.Of(level));
        }

        if (item.Thing.KeptWhere is { } place)
        {
            yield return ("kept-where", place);
        }

        if (item.State.LastCounted is { } counted)
        {
            yield return ("counted", words.Figures.Moment(counted.At));
        }
    }
}
