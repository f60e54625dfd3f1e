using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Yeast;

/// <summary>Poured away, and why.</summary>
public sealed record CultureDiscarded(Guid CultureId, string Why) : LogEntry
{
    public const string Code = "culture-discarded";

    public override IEnumerable<Subject> Subjects => [Subject.Culture(CultureId)];

    public override IEnumerable<Objection> Objections(Floor before)
    {
        var (culture, state) = before.Culture(CultureId);
        if (state.Discarded is { } discarded)
        {
            yield return Objection.Impossible(Code, new("culture", culture.Called), new("discarded", discarded.At));
        }
    }

    public override CultureState Change(CultureState culture, Listed<HandedOver> handed) =>
        culture with
        {
            Discarded = Moment.Of(this),
        };
}
