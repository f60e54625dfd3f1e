using BrewFloor.Brewing.Carbonation;
using BrewFloor.Brewing.Extract;
using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Jobs;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using UnitsNet;
using static BrewFloor.Domain.Tests.Tanks.BeerLogs;
using static BrewFloor.Domain.Tests.Tanks.TankLogs;

namespace BrewFloor.Domain.Tests.Jobs;

/// <summary>Batch 118 is an ale in P2 (180 kPa at its relief valve) that may fall to 1.010 and is to hold 2 volumes.</summary>
public class CloseValveTests
{
    private static readonly Batch Wanting = Batch118 with
    {
        CarbonDioxideWanted = CarbonDioxideContent.OfVolumes(2).Value,
    };

    private static readonly LogEntry[] Falling =
    [
        FilledAt(1.048, 450, P2).On(0),
        Pitched(P2).On(0, hour: 10),
        Gravity(1.046, P2).On(1),
        Gravity(1.034, P2).On(2),
        Gravity(1.022, P2).On(3),
    ];

    [Fact]
    public void The_valve_is_due_when_what_is_left_is_just_enough_and_overdue_six_hours_later()
    {
        var job = Assert.Single(Jobs(After(Falling)));

        // By hand: 3.927 g/L less 1.69 that an ale keeps at 19 °C, and 0.83 for a third of a litre of headspace at 1.38 bar;
        // 3.07 g/L are 0.66 °P real extract, 0.81 °P apparent.
        var end = After(Falling).Of(Batch118).ForecastOf(Wanting, [], Rules, Day(11)).Value.Outlook.Final.Likely;
        Assert.Equal(end.Value + 0.81, Strength.Plato(Said<SpecificGravity>(job, "close")), 0.02);
        Assert.InRange(job.DueAt, Day(3), Day(6));
        Assert.Equal(TimeSpan.FromHours(6), job.OverdueAt - job.DueAt);
        Assert.Equal(P2.Id, job.TankId);
        Assert.InRange(Said<Pressure>(job, "pressure").Kilopascals, 130, 150); // check CO-32: 2.2 vol at 20 °C takes 165
    }

    [Fact]
    public void It_is_due_since_the_reading_that_was_low_enough()
    {
        var job = Assert.Single(Jobs(After([.. Falling, Gravity(1.0115, P2).On(4)])));

        Assert.Equal(Day(4), job.DueAt);
        Assert.Equal(After(Falling).Of(Batch118).Pitches[0].Moment.Entry, job.Cause); // a reading moves it and makes no other job
    }

    [Fact]
    public void A_valve_that_is_set_or_shut_needs_nothing_and_an_opened_one_does_again()
    {
        var shut = After([.. Falling, Shut(Closure.Sealed).On(3, 9)]);
        var set = After([.. Falling, new PressureSet(P2.Id, Kpa(140)) { BatchId = Batch118.Id }.On(3, 9)]);

        Assert.Empty(Jobs(shut));
        Assert.Empty(Jobs(set));
        Assert.Single(Jobs(shut.And(new Vented(P2.Id) { BatchId = Batch118.Id }.On(3, 10))));
        Assert.Single(Jobs(set.And(Shut(Closure.Vented).On(3, 10))));
    }

    [Fact]
    public void A_lid_that_comes_off_lets_the_gas_go()
    {
        var shut = After([.. Falling, Shut(Closure.Sealed).On(3, 9)]);

        Assert.Single(Jobs(shut.And(new Opened(P2.Id) { BatchId = Batch118.Id }.On(3, 10))));
        Assert.Single(Jobs(shut.And(new PartsTakenOff(P2.Id, "manway") { BatchId = Batch118.Id }.On(3, 10))));
        Assert.Empty(
            After(FilledAt(1.048, 450, P2).On(0)).Says(new Vented(P2.Id) { BatchId = Batch119.Id }.On(-1)).Objections
        );
    }

    [Fact]
    public void After_dry_hops_its_readings_alone_say_when()
    {
        var hopped = After([.. Falling, DryHopped(tank: P2).On(3, 9)]);
        var low = hopped.And(Gravity(1.0115, P2).On(4));

        var job = Assert.Single(Jobs(hopped));
        Assert.Equal(("by-readings", Day(4)), (Said<string>(job, "variant"), job.DueAt)); // the next reading is due then
        Assert.Equal(Day(4), Assert.Single(Jobs(low)).DueAt);
    }

    [Fact]
    public void Nothing_is_asked_of_a_batch_that_wants_no_gas_or_of_a_tank_that_bears_none()
    {
        LogEntry[] unrated = [FilledAt(1.048).On(0), Pitched().On(0, hour: 10), Gravity(1.022).On(3)];

        Assert.Empty(Jobs(After(Falling), Batch118));
        Assert.Empty(Jobs(After(unrated)));
        Assert.Empty(Jobs(After(Falling).Where(P2 with { Relief = null })));
        Assert.Empty(Jobs(After([.. Falling, Gravity(1.010, P2).On(8), Gravity(1.010, P2).On(10)]))); // over: too late
    }

    [Fact]
    public void More_gas_than_the_relief_valve_holds_warm_is_refused_with_what_it_holds()
    {
        var (_, state) = After(Falling).Batch(Batch118.Id);
        var wanting = Wanting with { CarbonDioxideWanted = CarbonDioxideContent.OfVolumes(2.8).Value };

        var refusal = ValvePlan.For(state, wanting, state.InTanks[0], P2, Rules, Day(4)).Refusal!;

        Assert.Equal("gas-not-held", refusal.Code);
        Assert.InRange(double.Parse(refusal.To, provider: null), 2.3, 2.4);
    }

    [Fact]
    public void Without_a_reading_it_is_the_plan_that_says_when()
    {
        var job = Assert.Single(Jobs(After(Falling.AsSpan(0, 2))));

        Assert.Equal("unread", Said<string>(job, "variant"));
        Assert.DoesNotContain(job.Because, number => number.Name is "gravity");
    }

    private static Closed Shut(Closure closure) => new(P2.Id) { Closure = closure, BatchId = Batch118.Id };

    private static Pressure Kpa(double gauge) => Pressure.FromKilopascals(gauge);

    private static T Said<T>(Job job, string name) =>
        (T)job.Because.Single(number => string.Equals(number.Name, name, StringComparison.Ordinal)).Value!;

    private static Job[] Jobs(Floor floor, Batch? batch = null) =>
        [
            .. JobRules
                .For(floor.Where(batch ?? Wanting), Subject.Batch(Batch118.Id), Day(11))
                .Where(job => job.Rule is CloseValve.Rule),
        ];
}
