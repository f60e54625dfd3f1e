using BrewFloor.Brewing.Extract;
using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using UnitsNet;

namespace BrewFloor.Domain.Yeast;

/// <summary>Yeast taken for the next batch, in one cut or several; each is a culture of its own.</summary>
public sealed record Harvested(Guid TankId, Guid BatchId, HarvestedFrom From, Listed<CutTaken> Cuts) : LogEntry
{
    /// <summary>In °C, where the cuts are kept.</summary>
    public Temperature? StoredAt { get; init; }

    public override IEnumerable<Subject> Subjects =>
        [Subject.Tank(TankId), Subject.Batch(BatchId), .. Cuts.Select(c => Subject.Culture(c.NewCulture.Id))];

    public override IEnumerable<Objection> Objections(Floor before)
    {
        var (tank, state) = before.Tank(TankId);
        return
        [
            .. Beer.NotIn(TankId, BatchId, before),
            .. Cuts.Count is 0 ? [Objection.Impossible(NewYeast.Nothing)] : Array.Empty<Objection>(),
            .. Cuts.SelectMany(cut => NewYeast.Objections(cut.NewCulture.Id, YeastAmount.Of(cut.Volume), before)),
            .. Volumes.MoreOutThanIn(TankId, BatchId, Volume, before),
            .. Vacuum.WhenLettingOut(tank, state),
            .. HarvestGuards.Objections(this, before),
        ];
    }

    /// <summary>In L, all cuts together.</summary>
    public Volume Volume => Volume.FromLiters(Cuts.Sum(cut => cut.Volume.Liters));

    public override IEnumerable<Handover> Handovers =>
        from cut in Cuts
        from giver in (Subject[])[Subject.Tank(TankId), Subject.Batch(BatchId)]
        select new Handover(giver, Subject.Culture(cut.NewCulture.Id));

    public override HandedOver? HandedOverBy(State giver) =>
        giver switch
        {
            BatchState batch => Crop.Of(batch),
            TankState tank => new CropVessel(
                tank.Subject,
                tank.ExposedTo.Any(e => e.Kind is ExposureKind.MixedCulture)
            ),
            _ => null,
        };

    public override TankState Change(TankState tank, Listed<HandedOver> handed) => tank.Without(BatchId, Volume);

    public override BatchState Change(BatchState batch, Listed<HandedOver> handed) =>
        batch.OutOf(TankId, Volume, litres => litres with { Harvested = Books.Sum(litres.Harvested, Volume) }) with
        {
            Harvests = [.. batch.Harvests, Moment.Of(this)],
        };

    public override CultureState Change(CultureState culture, Listed<HandedOver> handed)
    {
        if (Cuts.FirstOrDefault(cut => cut.NewCulture.Id == culture.Id) is not { } cut)
        {
            return culture;
        }

        var crop = handed.OfType<Crop>().FirstOrDefault();
        return culture with
        {
            Made = Moment.Of(this),
            Amount = YeastAmount.Of(cut.Volume),
            AmountMade = YeastAmount.Of(cut.Volume),
            Generation = crop?.Generation ?? 1,
            IsGenerationAtLeast = crop?.IsAtLeast ?? true,
            Parents = crop?.Parents ?? [],
            From = new(BatchId, TankId, crop?.OriginalGravity, crop?.Gravity, crop?.IsHopped ?? false),
            StoredAt = StoredAt,
            IsExposed =
                cut.NewCulture.IsMixed
                || crop?.HasMixedCulture is true
                || handed.OfType<CropVessel>().Any(vessel => vessel.IsExposed),
        };
    }
}

/// <summary>What a batch hands to the yeast taken from it.</summary>
/// <param name="Generation">One above the highest that was pitched; 1 at least when nobody knows what was.</param>
/// <param name="Parents">The cultures pitched.</param>
public sealed record Crop(Subject Giver, int Generation, bool IsAtLeast, Listed<Guid> Parents) : HandedOver(Giver)
{
    public SpecificGravity? OriginalGravity { get; init; }

    /// <summary>The last one read.</summary>
    public SpecificGravity? Gravity { get; init; }

    public bool IsHopped { get; init; }

    public bool HasMixedCulture { get; init; }

    public static Crop Of(BatchState batch) =>
        new(
            batch.Subject,
            batch.Pitches.Select(pitch => pitch.Generation).DefaultIfEmpty(0).Max() + 1,
            batch.Pitches.Count is 0 || batch.Pitches.Any(pitch => pitch.IsAtLeast),
            [.. batch.Pitches.Select(pitch => pitch.CultureId).OfType<Guid>().Distinct()]
        )
        {
            OriginalGravity = batch.OriginalGravity,
            Gravity = batch.Gravities is [.., var last] ? last.Gravity : null,
            IsHopped = batch.DryHops is not [],
            HasMixedCulture = batch.HasMixedCulture,
        };
}

/// <summary>What a tank hands to the yeast taken from it: what it was exposed to.</summary>
public sealed record CropVessel(Subject Giver, bool IsExposed) : HandedOver(Giver);
