using BrewFloor.Domain.Items;
using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Tanks;

/// <summary>The parts are on again.</summary>
public sealed record Refitted(Guid TankId, string Parts) : LogEntry, ITakesStock
{
    /// <summary>What is on which port now; empty: on again as it was.</summary>
    public Listed<Fitting> Fitted { get; init; }

    /// <summary>Taken from the stock for it.</summary>
    public Listed<Used> Used { get; init; }

    public override IEnumerable<Subject> Subjects => [Subject.Tank(TankId), .. this.Items()];

    public override IEnumerable<Objection> Objections(Floor before)
    {
        var (tank, state) = before.Tank(TankId);
        return [.. Fittings.Misfits(tank, Fitted), .. Fittings.LeftOpen(tank, state.PutOn(On(state)))];
    }

    public override TankState Change(TankState tank, Listed<HandedOver> handed) =>
        tank.PutOn(On(tank)) with
        {
            PartsOff = null,
            Refitted = Moment.Of(this),
        };

    private Listed<Fitting> On(TankState tank) => Fitted is [] ? tank.ThatCameOff() : Fitted;
}
