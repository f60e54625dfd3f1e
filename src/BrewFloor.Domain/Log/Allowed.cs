namespace BrewFloor.Domain.Log;

/// <summary>A brewer allows beforehand what the floor stops: one entry of a kind, over these codes.</summary>
/// <param name="TankId">The tank.</param>
/// <param name="EntryKind">The stored name of the kind.</param>
/// <param name="Codes">The stops; a stop! cannot be allowed.</param>
/// <param name="Until">At most 24 h after the entry.</param>
/// <param name="Reason">Why it is all right this time.</param>
public sealed record Allowed(Guid TankId, string EntryKind, Listed<string> Codes, DateTimeOffset Until, string Reason)
    : LogEntry
{
    public Guid? BatchId { get; init; }

    public override Nature Nature => Nature.Told;

    public override IEnumerable<Subject> Subjects =>
        BatchId is { } batch ? [Subject.Tank(TankId), Subject.Batch(batch)] : [Subject.Tank(TankId)];

    public override IEnumerable<Objection> Objections(Floor before) => [];
}
