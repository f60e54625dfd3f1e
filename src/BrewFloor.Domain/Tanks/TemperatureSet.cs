using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Log;
using UnitsNet;

namespace BrewFloor.Domain.Tanks;

/// <summary>What the controller is told to hold.</summary>
public sealed record TemperatureSet(Guid TankId, Temperature Temperature) : LogEntry
{
    /// <summary>What an empty tank is taken to stand at when nobody read it (common practice, no source).</summary>
    private static readonly Temperature RoomWhenUnread = Temperature.FromDegreesCelsius(20);

    /// <summary>The batch in the tank: what it is decides how cold it may get.</summary>
    public Guid? BatchId { get; init; }

    public override Nature Nature => Nature.Told;

    public override IEnumerable<Subject> Subjects => Beer.About(TankId, BatchId);

    public override IEnumerable<Objection> Objections(Floor before)
    {
        var (tank, state) = before.Tank(TankId);
        return
        [
            .. Beer.NotNamed(TankId, BatchId, before),
            .. Readable.Objections(Temperature),
            .. HeatsNothing(tank, state),
            .. BatchId is { } batch ? Crash.Ice(tank, before.Batch(batch).State, Temperature) : [],
            .. Crash.Vacuum(tank, state, Temperature, before.Rules),
        ];
    }

    /// <summary>Stop: the heating of an empty tank is told to come on; it burns belts and what is left on the walls.</summary>
    private IEnumerable<Objection> HeatsNothing(Tank tank, TankState state)
    {
        var now = state.Temperature?.Value ?? RoomWhenUnread;
        if (
            tank.Heating is not Heating.None
            && state.Contents.What is Holding.Nothing
            && Temperature.DegreesCelsius > now.DegreesCelsius
        )
        {
            yield return Objection.Stop(
                "heating-empty",
                new("tank", tank.Code),
                new("set", Temperature),
                new("temperature", now)
            );
        }
    }

    public override TankState Change(TankState tank, Listed<HandedOver> handed) =>
        tank with
        {
            TemperatureSet = new(Temperature, Moment.Of(this)),
        };
}
