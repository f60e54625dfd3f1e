using BrewFloor.Domain.Log;
using UnitsNet;

namespace BrewFloor.Domain.Yeast;

/// <summary>Yeast taken for the next batch, in one cut or several; each is a culture of its own.</summary>
public sealed record Harvested(Guid TankId, Guid BatchId, HarvestedFrom From, Listed<CutTaken> Cuts) : LogEntry
{
    /// <summary>In °C, where the cuts are kept.</summary>
    public Temperature? StoredAt { get; init; }

    public override IEnumerable<Subject> Subjects =>
        [Subject.Tank(TankId), Subject.Batch(BatchId), .. Cuts.Select(c => Subject.Culture(c.NewCulture.Id))];

    public override IEnumerable<Objection> Objections(Floor before) => [];
}
