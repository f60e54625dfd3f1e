using BrewFloor.Brewing.Extract;
using BrewFloor.Domain.Batches;
using BrewFloor.Domain.House;
using BrewFloor.Domain.Log;
using BrewFloor.Web.Shell;
using UnitsNet;

namespace BrewFloor.Web.Batches;

/// <summary>A batch as a page shows it, at a moment.</summary>
public sealed record ShownBatch(Batch Thing, BatchState State, HouseRules Rules, DateTimeOffset Now)
{
    public Stage Stage => State.StageOf(Thing, Rules);

    public double? HowFar => State.HowFar(Thing);
}

/// <summary>What a page says of a batch, in words and figures.</summary>
public static class BatchWords
{
    /// <summary>"Fermenting, day 4, 61 % of the fall".</summary>
    public static string Stage(ShownBatch batch, Wording words)
    {
        var state = batch.State;
        var since = batch.Stage switch
        {
            Domain.Batches.Stage.Planned => state.PlannedAt,
            Domain.Batches.Stage.Packaged => state.Packaged?.At,
            Domain.Batches.Stage.Discarded => state.Discarded?.At,
            _ => state.Filled?.At,
        };
        var day = since is { } from
            ? batch.Rules.DateOf(batch.Now).DayNumber - batch.Rules.DateOf(from).DayNumber + 1
            : (int?)null;
        var far = batch.Stage is Domain.Batches.Stage.Fermenting ? batch.HowFar : null;
        return words[
            far is null ? "state-stage-" + batch.Stage : "state-stage-FermentingFar",
            new("at", since),
            new("day", day),
            new("far", far is { } share ? words.Figures.Share(share) : null)
        ];
    }

    public static string Numbers(ShownBatch batch, Wording words) =>
        string.Join(
            " · ",
            Facts(batch, words)
                .Where(fact => fact.Key is "original" or "gravity" or "alcohol")
                .Select(fact => fact.Value)
        );

    public static IEnumerable<(string Key, string Value)> Facts(ShownBatch batch, Wording words)
    {
        var (state, figures) = (batch.State, words.Figures);
        if (state.OriginalGravity is { } original)
        {
            yield return ("original", figures.Of(original));
        }

        if (state.Gravities is { Count: > 0 } gravities)
        {
            var present = gravities[^1].Gravity;
            yield return ("gravity", figures.Of(present));
            if (state.OriginalGravity is { } from && Attenuation.From(from, present).Gives(out var attenuation))
            {
                yield return (
                    "alcohol",
                    $"{attenuation.AlcoholByVolume.Percent.ToString("0.0", figures.Culture)} ± {Math.Max(0.1, attenuation.PlusMinus.Percent).ToString("0.0", figures.Culture)} %"
                );
                yield return ("attenuation", $"{attenuation.ApparentDegree.Percent.ToString("0", figures.Culture)} %");
            }
        }

        if (batch.HowFar is { } far)
        {
            yield return ("far", figures.Share(far));
        }

        yield return ("kind", words.Entry("choice.BeerKind." + batch.Thing.Kind));
        if (state.Allergens.Count > 0)
        {
            yield return ("allergens", string.Join(", ", state.Allergens));
        }
    }

    /// <summary>Where every litre is or went; what is nothing is left out.</summary>
    public static IEnumerable<(string Key, string Value)> Litres(
        ShownBatch batch,
        IReadOnlyDictionary<Guid, string> tanks,
        Wording words
    )
    {
        var (litres, figures) = (batch.State.Litres, words.Figures);
        yield return (words["litres-in"], figures.Of(litres.FilledIn));
        foreach (var tank in batch.State.InTanks)
        {
            yield return (
                words["litres-tank", new Number("tank", tanks.TryGetValue(tank.TankId, out var code) ? code : "?")],
                tank.Volume is { } volume ? figures.Of(volume) : words["volume-unknown"]
            );
        }

        (string Key, Volume Volume)[] went =
        [
            ("litres-packaged", litres.Packaged),
            ("litres-discarded", litres.Discarded),
            ("litres-dumped", litres.Dumped),
            ("litres-harvested", litres.Harvested),
            ("litres-left", litres.Left),
            ("litres-difference", litres.MeasuringDifference),
        ];
        foreach (var (key, volume) in went.Where(part => Math.Abs(part.Volume.Liters) > 0.0005))
        {
            yield return (words[key], figures.Of(volume));
        }
    }
}
