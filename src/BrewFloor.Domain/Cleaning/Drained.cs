using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using UnitsNet;

namespace BrewFloor.Domain.Cleaning;

/// <summary>The liquid left the tank.</summary>
/// <param name="TankId">The tank.</param>
/// <param name="Held">How it stands since.</param>
public sealed record Drained(Guid TankId, Closure Held) : LogEntry
{
    /// <summary>It was pushed out with carbon dioxide, so the tank stands under it.</summary>
    public bool IsUnderCarbonDioxide { get; init; }

    public override IEnumerable<Subject> Subjects => [Subject.Tank(TankId)];

    public override IEnumerable<Objection> Objections(Floor before)
    {
        var (tank, state) = before.Tank(TankId);
        return
        [
            .. NothingIn(tank, state),
            .. Contact(tank, state),
            .. Vacuum.WhenLettingOut(tank, state),
            .. Held is Closure.Sealed ? PressureGuards.Raising(tank, state, before.Rules, At, to: null) : [],
        ];
    }

    public override TankState Change(TankState tank, Listed<HandedOver> handed)
    {
        var gas = IsUnderCarbonDioxide ? Gas.CarbonDioxide : tank.Gas;
        var shut = tank.ShutAs(Held, gas, At);
        var after = Held is Closure.Sealed ? shut.InDoubt() : shut.AtPressure(Pressures.None, this);
        return tank.HoldsBeer ? after : LeftBy(tank.Contents.What, after);
    }

    private TankState LeftBy(Holding liquid, TankState tank)
    {
        var empty = tank with { Contents = Contents.Nothing, SanitizerIn = null };
        return liquid is Holding.Sanitizer && tank.Soil is Soil.Clean
            ? empty.WithoutStretches().WithSoil(Soil.Sanitized, this) with
            {
                Sanitized = Moment.Of(this),
                StretchesSinceDrained = [new(Held, tank.Gas, At)],
            }
            : empty;
    }

    private static IEnumerable<Objection> NothingIn(Tank tank, TankState state)
    {
        if (state.Contents.What is Holding.Nothing or Holding.Beer)
        {
            yield return Objection.Impossible("nothing-to-drain", new Number("tank", tank.Code));
        }
    }

    private IEnumerable<Objection> Contact(Tank tank, TankState state) =>
        state is { SanitizerIn: { } began, Contents: { What: Holding.Sanitizer, Agent: { } agent } contents }
            ? Chemistry.ContactShort(
                tank,
                agent,
                Duration.FromMinutes((At - began.At).TotalMinutes),
                contents.LabelMinutes
            )
            : [];
}
