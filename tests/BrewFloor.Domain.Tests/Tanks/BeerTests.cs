using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using static BrewFloor.Domain.Tests.Tanks.BeerLogs;
using static BrewFloor.Domain.Tests.Tanks.TankLogs;

namespace BrewFloor.Domain.Tests.Tanks;

/// <summary>What every entry shares that lets beer out of a tank.</summary>
public class BeerTests
{
    public static readonly TheoryData<LogEntry> LettingOut =
    [
        Racked(300),
        Kegged(300),
        Discarded(300),
        Emptied(),
        Dumped(Sediment.Trub),
    ];

    public static TankState SealedAtNone(TankState tank) => Sealed(tank, 0);

    public static TankState Sealed(TankState tank, double kilopascals) =>
        tank with
        {
            Closure = Closure.Sealed,
            Gas = Gas.CarbonDioxide,
            Pressure = new(KPa(kilopascals), new(Day(0), Guid.Empty)),
            IsPressureInDoubt = false,
        };

    [Theory]
    [MemberData(nameof(LettingOut))]
    public void Beer_the_log_knows_nothing_of_goes_nowhere(LogEntry entry) =>
        Assert.Equal(Level.Impossible, NewFloor.Says(entry.On(5)).LevelOf("no-such-beer"));

    [Theory]
    [MemberData(nameof(LettingOut))]
    public void What_leaves_a_tank_sealed_at_no_pressure_leaves_a_vacuum(LogEntry entry)
    {
        var full = After(Filled(900).On(0));

        Assert.Equal(Level.Caution, full.Standing(K3, SealedAtNone).Says(entry.On(5)).LevelOf("sealed-no-pressure"));
        Assert.Null(full.Standing(K3, t => Sealed(t, 30)).Says(entry.On(5)).About("sealed-no-pressure"));
        Assert.Null(full.Says(entry.On(5)).About("sealed-no-pressure"));
    }

    [Theory]
    [MemberData(nameof(LettingOut))]
    public void Letting_out_under_a_pressure_nobody_knows_is_cautioned(LogEntry entry) =>
        Assert.Equal(
            Level.Caution,
            After(Filled(900).On(0))
                .Standing(K3, t => Sealed(t, 30) with { IsPressureInDoubt = true })
                .Says(entry.On(5))
                .LevelOf("sealed-pressure-unknown")
        );
}
