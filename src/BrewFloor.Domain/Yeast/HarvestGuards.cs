using BrewFloor.Brewing.Extract;
using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Jobs;
using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Yeast;

/// <summary>What makes a crop a poor one. All of it common practice, no source, but for the generations.</summary>
internal static class HarvestGuards
{
    public static IEnumerable<Objection> Objections(Harvested crop, Floor before)
    {
        var (batch, state) = before.Batch(crop.BatchId);
        return
        [
            .. TrubNotDumped(crop, state, before),
            .. Strong(state, before),
            .. Generation(crop, state, before),
            .. Late(crop, batch, state, before),
            .. Hopped(state),
            .. Exposed(crop, state, before),
        ];
    }

    private static IEnumerable<Objection> TrubNotDumped(Harvested crop, BatchState state, Floor before)
    {
        var isFromWort = !state.IsTakenOver && state.In(crop.TankId) is { IsWort: true };
        if (crop.From is HarvestedFrom.Cone && isFromWort && !DumpTrub.IsDumped(state, crop.TankId))
        {
            yield return Objection.Caution("trub-not-dumped", new Number("tank", before.Tank(crop.TankId).Thing.Code));
        }
    }

    private static IEnumerable<Objection> Strong(BatchState state, Floor before)
    {
        var rules = before.Rules;
        if (state.OriginalGravity is { } original && Strength.Plato(original) > rules.HarvestPlatoLimit)
        {
            yield return Objection.Caution(
                "strong-wort",
                new("original", original),
                new("limit", new DegreesPlato(rules.HarvestPlatoLimit))
            );
        }

        if (
            Strength.Of(state) is { IsDone: true, Value: var strength }
            && strength.AlcoholByVolume.Percent > rules.HarvestAlcoholLimit
        )
        {
            yield return Objection.Caution(
                "strong-beer",
                new("abv", Math.Round(strength.AlcoholByVolume.Percent, 1)),
                new("limit", rules.HarvestAlcoholLimit)
            );
        }
    }

    private static IEnumerable<Objection> Generation(Harvested crop, BatchState state, Floor before)
    {
        var generation = Crop.Of(state).Generation;
        int?[] own = [.. crop.Cuts.Select(cut => before.OwnLimit(cut.NewCulture.Id))];
        var limit = Generations.Limit(own.Min(), state.OriginalGravity, before.Rules);
        if (generation > limit)
        {
            yield return Objection.Caution("generation-limit", new("generation", generation), new("limit", limit));
        }
    }

    private static IEnumerable<Objection> Late(Harvested crop, Batch batch, BatchState state, Floor before)
    {
        if (
            HarvestYeast.StandsStillAt(batch, state, before.Rules) is { } end
            && crop.At - end.At > before.Rules.HarvestWindow
        )
        {
            yield return Objection.Caution(
                "harvest-late",
                new("finished", end.At),
                new("window", before.Rules.HarvestWindow)
            );
        }
    }

    private static IEnumerable<Objection> Hopped(BatchState state)
    {
        if (state.DryHops is [var first, ..])
        {
            yield return Objection.Caution("yeast-hopped", new Number("hopped", first.Moment.At));
        }
    }

    private static IEnumerable<Objection> Exposed(Harvested crop, BatchState state, Floor before)
    {
        var (tank, vessel) = before.Tank(crop.TankId);
        if (state.HasMixedCulture || vessel.ExposedTo.Any(e => e.Kind is ExposureKind.MixedCulture))
        {
            yield return Objection.Caution("yeast-exposed", new Number("tank", tank.Code));
        }
    }

    private static int? OwnLimit(this Floor floor, Guid cultureId) =>
        floor.Cultures.FirstOrDefault(culture => culture.State?.Id == cultureId).Thing?.GenerationLimit;
}
