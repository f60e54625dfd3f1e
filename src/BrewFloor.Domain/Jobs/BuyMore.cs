using BrewFloor.Domain.House;
using BrewFloor.Domain.Items;

namespace BrewFloor.Domain.Jobs;

/// <summary>An item is down to where more is bought.</summary>
public static class BuyMore
{
    public const string Rule = "buy-more";

    // A delivery takes a week or two. Common practice, no source.
    private static readonly TimeSpan Patience = TimeSpan.FromDays(14);

    public static IEnumerable<Job> For(Item item, ItemState state, HouseRules rules, DateTimeOffset now)
    {
        if (
            item.ReorderAt is not { } level
            || state is not { Amount: { } left, Stocked: { } stocked, AmountChanged: { } changed }
            || left.Measure != level.Measure
            || left.IsMoreThan(level)
        )
        {
            yield break;
        }

        yield return new(
            Rule,
            state.Subject,
            stocked.Entry,
            changed.At,
            left.IsNothing ? changed.At : changed.At + Patience,
            [
                new("variant", left.IsNothing ? "none" : "low"),
                new("item", item.Name),
                new("left", left),
                new("level", level),
            ]
        );
    }
}
