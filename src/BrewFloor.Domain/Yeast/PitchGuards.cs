using BrewFloor.Brewing.Extract;
using BrewFloor.Domain.House;
using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Yeast;

/// <summary>What the floor says to taking yeast out of a jar for a batch.</summary>
internal static class PitchGuards
{
    /// <summary>Contradictions first, then what asks for a count.</summary>
    public static IEnumerable<Objection> Objections(
        (Culture Thing, CultureState State) jar,
        YeastAmount amount,
        HouseRules rules,
        DateTimeOffset at
    ) => [.. Contradictions(jar, amount, rules), .. AsksForACount(jar, rules, at)];

    private static IEnumerable<Objection> Contradictions(
        (Culture Thing, CultureState State) jar,
        YeastAmount amount,
        HouseRules rules
    )
    {
        var (culture, state) = jar;
        if (state.Discarded is { } discarded)
        {
            yield return Objection.Impossible(
                CultureDiscarded.Code,
                new("culture", culture.Called),
                new("discarded", discarded.At)
            );
        }

        if (amount.IsNothing)
        {
            yield return Objection.Impossible(NewYeast.Nothing);
        }
        else if (!amount.IsSameMeasureAs(state.AmountMade))
        {
            yield return Objection.Impossible(
                "wrong-measure",
                new("culture", culture.Called),
                new("measure", state.AmountMade.IsMass ? "g" : "mL")
            );
        }
        else if (Taken(state) + amount.Value > state.AmountMade.Value * (1 + rules.YeastErrorShare))
        {
            yield return Objection.Impossible(
                "more-yeast-than-left",
                new("culture", culture.Called),
                new("amount", InWords(amount)),
                new("left", InWords(state.Amount))
            );
        }
    }

    /// <summary>A count since makes up for all three: it says what the storing and the beer did.</summary>
    /// <remarks>
    /// Beyond 4 days (a current textbook chapter), above 5 °C or out of beer above 8 % v/v (both ours, from the spread of McCaig
    /// and Bendiak 1985): measure before pitching. As <see cref="Brewing.Yeast.YeastKeeping"/> has it.
    /// </remarks>
    private static IEnumerable<Objection> AsksForACount(
        (Culture Thing, CultureState State) jar,
        HouseRules rules,
        DateTimeOffset at
    )
    {
        var (culture, state) = jar;
        if (!culture.IsLoose() || (state.Counts is [.., var count] && at - count.Moment.At <= rules.CountAfter))
        {
            yield break;
        }

        if (state.Made is { } made && at - made.At > rules.CountAfter)
        {
            yield return Objection.Caution("yeast-not-counted", new("culture", culture.Called), new("made", made.At));
        }

        if (state.StoredAt is { } kept && kept.DegreesCelsius > rules.CultureKeptBelow.DegreesCelsius)
        {
            yield return Objection.Caution(
                "yeast-kept-warm",
                new("culture", culture.Called),
                new("kept", kept),
                new("limit", rules.CultureKeptBelow)
            );
        }

        if (AlcoholOf(state.From) is { } alcohol && alcohol > rules.PitchAlcoholLimit)
        {
            yield return Objection.Caution(
                "yeast-from-strong-beer",
                new("culture", culture.Called),
                new("abv", Math.Round(alcohol, 1)),
                new("limit", rules.PitchAlcoholLimit)
            );
        }
    }

    private static double Taken(CultureState state) => state.PitchedInto.Sum(pitched => pitched.Amount.Value);

    // In % v/v.
    private static double? AlcoholOf(Source? from) =>
        from is { OriginalGravity: { } original, Gravity: { } present }
        && Attenuation.From(original, present).Gives(out var attenuation)
            ? attenuation.AlcoholByVolume.Percent
            : null;

    private static object InWords(YeastAmount amount) =>
        amount.IsMass ? UnitsNet.Mass.FromGrams(amount.Grams) : UnitsNet.Volume.FromLiters(amount.Milliliters / 1000);
}
