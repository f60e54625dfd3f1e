using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;

namespace BrewFloor.Domain.Cleaning;

/// <summary>Somebody looked, and it was clean or not.</summary>
public sealed record Inspected(Guid TankId, InspectedHow How, bool Passed) : LogEntry
{
    /// <summary>What a swab or the rinse water showed, in its own unit.</summary>
    public double? Value { get; init; }

    public override Nature Nature => Nature.Reading;

    public override IEnumerable<Subject> Subjects => [Subject.Tank(TankId)];

    public override IEnumerable<Objection> Objections(Floor before) => [];

    public override TankState Change(TankState tank, Listed<HandedOver> handed) =>
        tank.HoldsBeer ? tank
        : Passed ? FoundClean(tank)
        : FoundSoiled(tank);

    // Clean is washed, rinsed and seen: a look alone makes nothing clean.
    private TankState FoundClean(TankState tank)
    {
        var isWashed = tank is { Soil: Soil.Rinsed, Washed: not null, RinsedAfterWash: not null };
        return (isWashed ? tank.WithSoil(Soil.Clean, this) : tank) with
        {
            ExposedTo = [.. tank.ExposedTo.Select(e => e with { Inspected = e.Inspected || e.Washes >= 2 })],
        };
    }

    private TankState FoundSoiled(TankState tank) =>
        tank.WithoutStretches() with
        {
            Soil = Soil.Soiled,
            SoilSince = Moment.Of(this),
            Washed = null,
            RinsedAfterWash = null,
            SoiledBeforeRinse = null,
            Sanitized = null,
            ExposedTo = [.. tank.ExposedTo.Select(e => e with { Inspected = false })],
        };
}
