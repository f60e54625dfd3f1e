using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Tanks;

/// <summary>What is on the ports was looked at and written down; nothing was opened, nothing came off.</summary>
/// <remarks>So that a tank that joins with its parts on needs no leak test for having been written down.</remarks>
public sealed record PartsSeen(Guid TankId, Listed<Fitting> Fitted) : LogEntry
{
    public override Nature Nature => Nature.Reading;

    public override IEnumerable<Subject> Subjects => [Subject.Tank(TankId)];

    public override IEnumerable<Objection> Objections(Floor before)
    {
        var (tank, _) = before.Tank(TankId);
        return Fittings.Misfits(tank, Fitted);
    }

    public override TankState Change(TankState tank, Listed<HandedOver> handed) => tank.PutOn(Fitted);
}
