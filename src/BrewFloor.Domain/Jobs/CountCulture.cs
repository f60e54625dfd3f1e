using BrewFloor.Domain.House;
using BrewFloor.Domain.Yeast;

namespace BrewFloor.Domain.Jobs;

/// <summary>A slurry that gets older is to be counted before it is pitched, in a house that counts.</summary>
public static class CountCulture
{
    public const string Rule = "count-culture";

    public static IEnumerable<Job> For(Culture culture, CultureState state, HouseRules rules, DateTimeOffset now)
    {
        if (!rules.CountsCultures || !culture.IsLoose() || !state.IsUsable || state.Made is not { } made)
        {
            yield break;
        }

        // A count is as good as fresh yeast: the next is due as long after it.
        var last = state.Counts is [.., var count] ? count.Moment : made;
        var due = last.At + rules.CountAfter;
        yield return new(
            Rule,
            state.Subject,
            last.Entry,
            due,
            due + TimeSpan.FromDays(rules.SlurryDays),
            [
                new("variant", state.Counts is [] ? "never" : "again"),
                new("culture", culture.Number),
                new("since", last.At),
            ]
        );
    }
}
