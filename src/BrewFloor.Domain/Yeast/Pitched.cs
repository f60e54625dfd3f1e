using BrewFloor.Domain.Log;

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

    public override IEnumerable<Objection> Objections(Floor before) => [];
}
