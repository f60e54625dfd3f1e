using BrewFloor.Domain.Log;
using UnitsNet;

namespace BrewFloor.Domain.Yeast;

/// <summary>Yeast that was in the fridge before the log began; its parents are not known.</summary>
public sealed record CultureTakenOver(NewCulture NewCulture, YeastAmount Amount, int GenerationAtLeast) : LogEntry
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
            Generation = GenerationAtLeast,
            IsGenerationAtLeast = true,
            StoredAt = StoredAt,
            IsExposed = NewCulture.IsMixed,
        };
}
