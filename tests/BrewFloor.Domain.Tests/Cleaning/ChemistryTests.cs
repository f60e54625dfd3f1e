using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using UnitsNet;
using static BrewFloor.Domain.Tests.Cleaning.CleaningLogs;

namespace BrewFloor.Domain.Tests.Cleaning;

public class ChemistryTests
{
    private static readonly Tank Glass = K3 with { Material = Material.Glass };

    public static readonly TheoryData<string[], LogEntry[]> Gases = new()
    {
        { [], [Vented(0)] }, // air
        { ["alkaline-under-co2"], [Purged(0)] },
        { [], [Purged(0), Aired(1)] },
        { ["alkaline-under-co2"], [Purged(0), Opened(1)] }, // an open port airs nothing
        { ["alkaline-under-co2"], [Then(0, new TankTakenOver(K3.Id))] }, // unknown counts as CO2
        { ["under-pressure", "alkaline-under-co2"], [Purged(0, kPa: 20)] },
        { ["pressure-unknown", "alkaline-under-co2"], [Closed(0, Closure.Sealed)] },
        { ["alkaline-under-co2"], [Purged(0, kPa: 20), Vented(1)] },
    };

    [Theory]
    [MemberData(nameof(Gases))]
    public void Alkaline_waits_until_the_tank_is_vented_and_aired(string[] codes, LogEntry[] log)
    {
        var tank = After(log);

        foreach (var agent in new[] { Agent.Alkaline, Agent.Caustic })
        {
            Assert.Equal(codes, tank.Says(Washed(9, agent)).Codes()); // cold, or nobody said
            Assert.Equal(codes, tank.Says(Washed(9, agent, celsius: 15)).Codes());
        }

        Assert.All(tank.Says(Washed(9)), o => Assert.Equal(Level.HardStop, o.Level));
    }

    [Fact]
    public void Alkaline_under_gas_says_what_pressure_would_be_left() =>
        Assert.Equal(
            [Objection.HardStop("alkaline-under-co2", new("tank", "K3"), new("absolute", KPa(7)))],
            After(Purged(0)).Says(Washed(9))
        );

    [Fact]
    public void Acid_under_gas_in_a_closed_circuit_within_the_rating_is_a_caution()
    {
        var acid = Washed(9, Agent.Acid) with { IsClosedCircuit = true };
        var tank = After(Purged(0, kPa: 100));

        Assert.Equal([("acid-under-co2", Level.Caution)], tank.Says(acid).Select(o => (o.Code, o.Level)));
        Assert.Equal(["acid-under-co2"], After(Purged(0), Vented(1)).Says(Washed(9, Agent.Acid)).Codes());
        Assert.Empty(After(Aired(1)).Says(Washed(9, Agent.Acid)));
    }

    [Fact]
    public void Acid_under_pressure_is_stopped_where_the_vessel_may_not_hold_it()
    {
        var acid = Washed(9, Agent.Acid) with { IsClosedCircuit = true };
        var overdue = K3 with { Relief = new(KPa(150), new(2025, 3, 1)) };

        Assert.Contains("relief-test-overdue", HardStops(After(Purged(0, kPa: 100)), acid, overdue));
        Assert.Contains("no-rating", HardStops(After(Purged(0, kPa: 100)), acid, K3 with { Rating = null }));
        Assert.Contains("over-pressure-limit", HardStops(After(Read(0, 160)), acid, K3));
        Assert.Contains("pressure-unknown", HardStops(After(Closed(0, Closure.Sealed)), acid, K3));
        Assert.Contains(
            "circuit-open-under-pressure",
            HardStops(After(Purged(0, kPa: 100)), acid with { IsClosedCircuit = false }, K3)
        );
    }

    public static readonly TheoryData<bool, LogEntry[], LogEntry> Meetings = new()
    {
        { true, [Washed(0, Agent.Chlorinated)], Washed(1, Agent.Acid) },
        { true, [Washed(0, Agent.Acid)], Washed(1, Agent.Chlorinated) },
        { true, [Sanitized(0), Drained(1)], Washed(2, Agent.Chlorinated) }, // peracetic without a rinse
        { true, [Washed(0, Agent.Chlorinated)], Sanitized(1) },
        { true, [Washed(0, Agent.Chlorinated)], Passivated(1) },
        { true, [Passivated(0), AirDried(1)], Washed(2, Agent.Chlorinated) }, // dried on
        { false, [Washed(0, Agent.Chlorinated), Rinsed(0.5)], Washed(1, Agent.Acid) },
        { false, [Washed(0, Agent.Acid), Rinsed(0.5)], Washed(1, Agent.Chlorinated) },
        { false, [Washed(0, Agent.Alkaline)], Washed(1, Agent.Acid) },
    };

    [Theory]
    [MemberData(nameof(Meetings))]
    public void Chlorine_and_acid_never_meet_in_either_order(bool stopped, LogEntry[] log, LogEntry next)
    {
        var objections = After(log).Says(next, Glass);

        Assert.Equal(
            stopped ? Level.HardStop : null,
            objections.FirstOrDefault(o => o.Code is "chlorine-meets-acid")?.Level
        );
    }

    [Fact]
    public void Chlorine_goes_on_no_steel()
    {
        Assert.Equal(
            [("chlorine-on-steel", Level.Stop)],
            After().Says(Washed(1, Agent.Chlorinated)).Select(o => (o.Code, o.Level))
        );
        Assert.Empty(After().Says(Washed(1, Agent.Chlorinated), Glass));
    }

    [Theory]
    [InlineData(85, false)] // what the weakest part stands
    [InlineData(85.1, true)]
    public void Nothing_hotter_than_the_weakest_part_stands(double celsius, bool stopped) =>
        Assert.Equal(stopped ? ["too-hot-for-tank"] : [], After().Says(Washed(1, celsius: celsius)).Codes());

    [Fact]
    public void Hot_water_that_nobody_measured_is_too_hot_for_plastic()
    {
        var clean = After(Washed(-8), Rinsed(-7), Inspected(-6));

        Assert.Equal(["too-hot-for-tank"], clean.Says(Sanitized(1, Agent.HotWater), Plastic).Codes());
        Assert.Empty(clean.Says(Sanitized(1, Agent.HotWater)));
    }

    [Fact]
    public void A_wash_shorter_than_its_label_is_a_caution()
    {
        var washed = Washed(1) with { Minutes = Duration.FromMinutes(14), LabelMinutes = Duration.FromMinutes(15) };

        Assert.Equal(["contact-short"], After().Says(washed).Codes());
        Assert.Empty(After().Says(washed with { Minutes = Duration.FromMinutes(15) }));
        Assert.Empty(After().Says(washed with { Minutes = null }));
    }

    private static IEnumerable<string> HardStops(TankState state, LogEntry entry, Tank tank) =>
        state.Says(entry, tank).Where(o => o.Level is Level.HardStop).Select(o => o.Code);
}
