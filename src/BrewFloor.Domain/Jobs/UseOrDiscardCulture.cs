using BrewFloor.Domain.House;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Yeast;

namespace BrewFloor.Domain.Jobs;

/// <summary>Yeast that is getting old: by its days, by the date on the pack, by what lives of it, or by its generation.</summary>
/// <remarks>Common practice, no source, but for what lives of it: see <see cref="Viability"/>.</remarks>
public static class UseOrDiscardCulture
{
    public const string Rule = "use-or-discard-culture";

    private readonly record struct Reason(string Why, DateTimeOffset DueAt, DateTimeOffset OverdueAt);

    public static IEnumerable<Job> For(Culture culture, CultureState state, HouseRules rules, DateTimeOffset now)
    {
        if (!state.IsUsable || state.Made is not { } made)
        {
            yield break;
        }

        Reason[] reasons = [.. Reasons(culture, state, made, rules)];
        if (reasons.Length is 0)
        {
            yield break;
        }

        var first = reasons.MinBy(reason => reason.DueAt);
        var overdue = reasons.Min(reason => reason.OverdueAt);
        yield return new(
            Rule,
            state.Subject,
            made.Entry,
            first.DueAt,
            overdue < first.DueAt ? first.DueAt : overdue,
            [
                new("variant", first.Why),
                new("culture", culture.Number),
                new("made", made.At),
                new("generation", state.Generation),
                new("use_by", culture.UseBy),
            ]
        );
    }

    private static IEnumerable<Reason> Reasons(Culture culture, CultureState state, Moment made, HouseRules rules)
    {
        var old = DayAfter(made.At, rules.SlurryOverdueDays, rules);
        if (state.Generation >= Generations.Limit(culture.GenerationLimit, state.From?.OriginalGravity, rules))
        {
            yield return new("generation", made.At, old);
        }

        if (culture.UseBy is { } date && !culture.IsLoose())
        {
            var grace = rules.SlurryOverdueDays - rules.SlurryDays;
            yield return new("date", rules.StartOf(date), rules.StartOf(date.AddDays(grace)));
        }

        if (Viability.FallsBelow(rules.ViabilityDue, culture, state, rules) is { } low)
        {
            var gone = Viability.FallsBelow(rules.ViabilityOverdue, culture, state, rules) ?? DateTimeOffset.MaxValue;
            yield return new("viability", low, gone);
        }

        if (culture.IsLoose())
        {
            yield return new("age", DayAfter(made.At, rules.SlurryDays, rules), old);
        }
    }

    private static DateTimeOffset DayAfter(DateTimeOffset at, int days, HouseRules rules) =>
        rules.StartOf(rules.DateOf(at).AddDays(days));
}
