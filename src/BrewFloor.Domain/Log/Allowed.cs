using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Tanks;

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

    public override IEnumerable<Subject> Subjects => Beer.About(TankId, BatchId);

    /// <summary>Longer than this nobody knows what else has changed.</summary>
    public static readonly TimeSpan Longest = TimeSpan.FromHours(24);

    public override IEnumerable<Objection> Objections(Floor before)
    {
        if (!EntryKinds.ByName.ContainsKey(EntryKind))
        {
            yield return Objection.Impossible("unknown-kind", new Number("kind", EntryKind));
        }

        if (Until <= At || Until > At + Longest)
        {
            yield return Objection.Impossible("allowed-too-long", new("until", Until), new("latest", At + Longest));
        }

        foreach (var code in Codes.Where(code => !Stops.CanBeAllowed.Contains(code)))
        {
            yield return Objection.Impossible("not-a-stop", new Number("code", code));
        }

        if (Codes.Count is 0 || string.IsNullOrWhiteSpace(Reason))
        {
            yield return Objection.Impossible("no-reason");
        }
    }

    public override TankState Change(TankState tank, Listed<HandedOver> handed) =>
        tank with
        {
            Allowances =
            [
                .. tank.Allowances.Without(allowance => allowance.Until < At),
                new(Id, EntryKind, Codes, Until) { BatchId = BatchId },
            ],
        };
}
