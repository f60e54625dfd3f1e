using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Yeast;

/// <summary>Poured away, and why.</summary>
public sealed record CultureDiscarded(Guid CultureId, string Why) : LogEntry
{
    public override IEnumerable<Subject> Subjects => [Subject.Culture(CultureId)];

    public override IEnumerable<Objection> Objections(Floor before) => [];
}
