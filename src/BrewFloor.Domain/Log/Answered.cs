using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Tanks;
using BrewFloor.Domain.Yeast;

namespace BrewFloor.Domain.Log;

/// <summary>A brewer answers for what was done anyway.</summary>
/// <param name="Entry">The entry it is about.</param>
/// <param name="Words">What came of it.</param>
public sealed record Answered(Guid Entry, string Words) : LogEntry
{
    /// <summary>The subjects of that entry; the store fills them in.</summary>
    public Listed<Subject> Touched { get; init; }

    public override IEnumerable<Subject> Subjects => Touched;

    public override IEnumerable<Objection> Objections(Floor before)
    {
        if (!Subjects.Any(s => before.StateOf(s)?.Unanswered.Any(Is) is true))
        {
            yield return Objection.Impossible("nothing-to-answer");
        }
    }

    public override TankState Change(TankState tank, Listed<HandedOver> handed) =>
        tank with
        {
            Unanswered = tank.Unanswered.Without(Is),
        };

    public override BatchState Change(BatchState batch, Listed<HandedOver> handed) =>
        batch with
        {
            Unanswered = batch.Unanswered.Without(Is),
        };

    public override CultureState Change(CultureState culture, Listed<HandedOver> handed) =>
        culture with
        {
            Unanswered = culture.Unanswered.Without(Is),
        };

    private bool Is(DoneAnyway done) => done.Moment.Entry == Entry;
}
