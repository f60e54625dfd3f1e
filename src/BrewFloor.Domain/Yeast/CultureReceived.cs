using BrewFloor.Domain.Log;
using UnitsNet;

namespace BrewFloor.Domain.Yeast;

/// <summary>Fresh yeast from the supplier: generation 0.</summary>
public sealed record CultureReceived(NewCulture NewCulture, YeastAmount Amount) : LogEntry
{
    /// <summary>In °C, where it is kept.</summary>
    public Temperature? StoredAt { get; init; }

    public Guid CultureId => NewCulture.Id;

    public override IEnumerable<Subject> Subjects => [Subject.Culture(CultureId)];

    public override IEnumerable<Objection> Objections(Floor before) => NewYeast.Objections(CultureId, Amount, before);

    public override CultureState Change(CultureState culture, Listed<HandedOver> handed) =>
        culture with
        {
            Made = Moment.Of(this),
            Amount = Amount,
            AmountMade = Amount,
            StoredAt = StoredAt,
            IsExposed = NewCulture.IsMixed,
        };
}
