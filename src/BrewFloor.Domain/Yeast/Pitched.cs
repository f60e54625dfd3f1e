using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;

namespace BrewFloor.Domain.Yeast;

/// <summary>Yeast went into the wort.</summary>
public sealed record Pitched(Guid TankId, Guid BatchId, Listed<CulturePitched> Cultures) : LogEntry
{
    /// <summary>What was pitched that isn't a culture of this house.</summary>
    public string? Words { get; init; }

    public override IEnumerable<Subject> Subjects =>
        [
            Subject.Tank(TankId),
            Subject.Batch(BatchId),
            .. Cultures.Select(c => Subject.Culture(c.CultureId)).Distinct(),
        ];

    public override IEnumerable<Objection> Objections(Floor before)
    {
        foreach (var objection in Beer.NotIn(TankId, BatchId, before))
        {
            yield return objection;
        }

        if (Cultures.Count is 0 && string.IsNullOrWhiteSpace(Words))
        {
            yield return Objection.Impossible(NewYeast.Nothing);
        }

        foreach (var id in Cultures.Select(c => c.CultureId).Distinct())
        {
            foreach (var objection in PitchGuards.Objections(before.Culture(id), AmountOf(id), before.Rules, At))
            {
                yield return objection;
            }
        }
    }

    public override IEnumerable<Handover> Handovers =>
        from subject in Subjects
        where subject.Kind is SubjectKind.Culture
        from taker in (Subject[])[Subject.Tank(TankId), Subject.Batch(BatchId)]
        select new Handover(subject, taker);

    public override HandedOver? HandedOverBy(State giver) =>
        giver is CultureState culture
            ? new YeastGiven(culture.Subject, culture.Generation, culture.IsGenerationAtLeast, culture.IsExposed)
            : null;

    /// <summary>From here on carbon dioxide stands over the beer.</summary>
    public override TankState Change(TankState tank, Listed<HandedOver> handed) =>
        tank with
        {
            Gas = Gas.CarbonDioxide,
            ExposedTo = handed.OfType<YeastGiven>().Any(yeast => yeast.IsExposed)
                ? [.. tank.ExposedTo.Without(IsMixed), new(Moment.Of(this), ExposureKind.MixedCulture, Words ?? "")]
                : tank.ExposedTo,
        };

    public override BatchState Change(BatchState batch, Listed<HandedOver> handed)
    {
        var given = handed.OfType<YeastGiven>().ToDictionary(yeast => yeast.Giver.Id);
        return batch with
        {
            Pitches = [.. batch.Pitches, .. Pitches(given)],
            HasMixedCulture = batch.HasMixedCulture || given.Values.Any(yeast => yeast.IsExposed),
        };
    }

    public override CultureState Change(CultureState culture, Listed<HandedOver> handed)
    {
        var amount = AmountOf(culture.Id);
        return culture with
        {
            Amount = culture.Amount.Less(amount),
            PitchedInto = [.. culture.PitchedInto, new(Moment.Of(this), BatchId, amount)],
        };
    }

    private static bool IsMixed(Exposure exposure) => exposure.Kind is ExposureKind.MixedCulture;

    /// <summary>All that is taken of a culture, in however many lines.</summary>
    private YeastAmount AmountOf(Guid culture) =>
        Cultures.Where(c => c.CultureId == culture).Aggregate(default(YeastAmount), (sum, c) => sum.And(c.Amount));

    /// <summary>A pitch for each culture; one of a generation nobody knows when only words say what it was.</summary>
    private IEnumerable<Pitch> Pitches(Dictionary<Guid, YeastGiven> given) =>
        Cultures.Count is 0
            ? [new(Moment.Of(this), CultureId: null, default, Generation: 0, IsAtLeast: true)]
            :
            [
                .. from id in Cultures.Select(c => c.CultureId).Distinct()
                let yeast = given.GetValueOrDefault(id)
                select new Pitch(Moment.Of(this), id, AmountOf(id), yeast?.Generation ?? 0, yeast?.IsAtLeast ?? true),
            ];
}

/// <summary>What a culture hands to the batch it is pitched into, and to the tank.</summary>
public sealed record YeastGiven(Subject Giver, int Generation, bool IsAtLeast, bool IsExposed) : HandedOver(Giver);
