using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;

namespace BrewFloor.Domain.Cleaning;

/// <summary>Seen dry. After a bath this is the moment the film counts from.</summary>
public sealed record AirDried(Guid TankId) : LogEntry
{
    public override IEnumerable<Subject> Subjects => [Subject.Tank(TankId)];

    public override IEnumerable<Objection> Objections(Floor before)
    {
        var (tank, state) = before.Tank(TankId);
        return [.. Steps.HoldsBeer(tank, state), .. Wet(tank, state)];
    }

    public override TankState Change(TankState tank, Listed<HandedOver> handed) =>
        tank.Bath is not { } bath || tank.HoldsBeer
            ? tank
            : tank.WithSoil(Soil.Clean, this) with
            {
                Bath = null,
                Contents = Contents.Nothing,
                Dried = Moment.Of(this),
                DriedAfter = bath.Kind,
                FilledSinceDried = [],
                FilmHurt = tank.FilmHurt.Without(hurt => hurt.Moment.At <= bath.Moment.At), // a later scratch cuts the new film too
                PassivationUnknown = null,
            };

    private static IEnumerable<Objection> Wet(Tank tank, TankState state)
    {
        if (state.Contents.What is Holding.Sanitizer or Holding.Cleaner or Holding.Water)
        {
            yield return Objection.Impossible("liquid-in", new Number("tank", tank.Code));
        }
    }
}
