using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Tanks;

/// <summary>It was shut, and this is how it stands now.</summary>
public sealed record Closed(Guid TankId) : LogEntry
{
    /// <summary>Vented, closed or sealed.</summary>
    public Closure Closure { get; init; }

    public override IEnumerable<Subject> Subjects => [Subject.Tank(TankId)];

    public override IEnumerable<Objection> Objections(Floor before) => [];

    public override TankState Change(TankState tank, Listed<HandedOver> handed)
    {
        var shut = tank.ShutAs(Closure, Closure is Closure.Sealed ? Gas.CarbonDioxide : tank.Gas, At);
        return Closure switch
        {
            Closure.Sealed => shut.InDoubt(),
            Closure.Closed => tank.HoldsBeer ? shut.InDoubt() : shut,
            _ => shut.AtPressure(Pressures.None, this),
        };
    }
}
