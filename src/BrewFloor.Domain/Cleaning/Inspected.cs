using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Cleaning;

/// <summary>Somebody looked, and it was clean or not.</summary>
public sealed record Inspected(Guid TankId, InspectedHow How, bool Passed) : LogEntry
{
    /// <summary>What a swab or the rinse water showed, in its own unit.</summary>
    public double? Value { get; init; }

    public override Nature Nature => Nature.Reading;

    public override IEnumerable<Subject> Subjects => [Subject.Tank(TankId)];

    public override IEnumerable<Objection> Objections(Floor before) => [];
}
