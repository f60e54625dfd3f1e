using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Log;
using UnitsNet;

namespace BrewFloor.Domain.Tanks;

/// <summary>The temperature of the tank's contents was read.</summary>
public sealed record TemperatureTaken(Guid TankId, Temperature Temperature) : LogEntry
{
    /// <summary>From here on a hot step no longer pulls a vacuum worth naming (common practice, no source).</summary>
    private static readonly Temperature HotEnds = Temperature.FromDegreesCelsius(30);

    /// <summary>Less is within what a probe is off by (common practice, no source).</summary>
    private static readonly TemperatureDelta Warmer = TemperatureDelta.FromKelvins(1);

    /// <summary>Each is lower than the one before, so that a hand-kept log never gets there.</summary>
    private const int PeaksKept = 200;

    /// <summary>The batch in the tank, so that it remembers how warm it was.</summary>
    public Guid? BatchId { get; init; }

    public override Nature Nature => Nature.Reading;

    public override IEnumerable<Subject> Subjects => Beer.About(TankId, BatchId);

    /// <summary>The set point that held when it was read.</summary>
    public override IEnumerable<Handover> Handovers =>
        BatchId is { } batch ? [new(Subject.Tank(TankId), Subject.Batch(batch))] : [];

    public override HandedOver? HandedOverBy(State giver) =>
        giver is TankState { TemperatureSet: { } set } tank ? new SetPoint(tank.Subject, set.Value) : null;

    public override IEnumerable<Objection> Objections(Floor before) =>
        [.. BatchId is { } batch ? Beer.NotIn(TankId, batch, before) : [], .. Readable.Objections(Temperature)];

    /// <summary>Gas that warms in a shut tank pushes: the last pressure read no longer holds.</summary>
    public override TankState Change(TankState tank, Listed<HandedOver> handed) =>
        tank with
        {
            Temperature = new(Temperature, Moment.Of(this)),
            Hot = Temperature <= HotEnds ? null : tank.Hot,
            IsPressureInDoubt =
                tank.IsPressureInDoubt
                || (tank.IsShut && tank.Temperature is { } last && Temperature > last.Value + Warmer),
        };

    public override BatchState Change(BatchState batch, Listed<HandedOver> handed)
    {
        var set = handed.OfType<SetPoint>().FirstOrDefault()?.Temperature;
        TemperatureFact fact = new(At, Temperature);
        var after = batch with
        {
            LastTemperature = new(fact, set),
            TemperaturePeaks = batch
                .TemperaturePeaks.Without(peak => peak.Temperature <= Temperature)
                .And(fact, PeaksKept),
        };
        return batch.In(TankId) is { } beer
            ? after.With(beer with { Cold = IsColdBy(set) ? beer.Cold ?? Moment.Of(this) : null })
            : after;
    }

    private bool IsColdBy(Temperature? set) => set is { } point && Cold.IsReachedAt(Temperature, point);
}

/// <summary>What a tank was told to hold.</summary>
public sealed record SetPoint(Subject Giver, Temperature Temperature) : HandedOver(Giver);
