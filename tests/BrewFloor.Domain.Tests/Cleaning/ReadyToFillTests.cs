using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using UnitsNet;
using static BrewFloor.Domain.Tests.Cleaning.CleaningLogs;

namespace BrewFloor.Domain.Tests.Cleaning;

public class ReadyToFillTests
{
    // Passivated, dried, cleaned and sanitized, drained at 8 h into a vented tank.
    private static readonly LogEntry[] Ready =
    [
        Washed(-8),
        Rinsed(-7),
        Inspected(-6),
        Passivated(-5),
        AirDried(1),
        Sanitized(7),
        Drained(8, Closure.Vented),
    ];

    [Fact]
    public void A_passivated_sanitized_vented_tank_takes_the_wort() => Assert.Empty(Asked(After(Ready), 9));

    [Fact]
    public void A_tank_that_lacks_everything_hears_everything_in_the_order_of_mending()
    {
        var tank = After(Then(0, new PutOutOfService(K3.Id, "leg bent")), Exposed(1), PartsOff(2), Closed(3));

        Assert.Equal(
            [
                "out-of-service",
                "parts-off",
                "exposed-mixed-culture",
                "never-passivated",
                "not-sanitized",
                "vent-closed",
            ],
            Asked(tank, 9).Codes()
        );
    }

    [Fact]
    public void Sanitizer_still_in_is_a_stop() =>
        Assert.Equal(
            [Objection.Stop("sanitizer-in", new("tank", "K3"), new("since", At(7)))],
            Asked(After([.. Ready.SkipLast(1)]), 9)
        );

    [Theory]
    [InlineData(12, 0, true)] // four hours vented under air
    [InlineData(12, 1, false)]
    public void A_lapsed_sanitizing_comes_with_its_numbers(double hour, double minutes, bool taken) =>
        Assert.Equal(
            taken
                ? []
                : [Objection.Stop("sanitizing-lapsed", new("tank", "K3"), new("drained", At(8)), new("until", At(12)))],
            Asked(After(Ready), At(hour, minutes))
        );

    [Fact]
    public void A_tank_sanitized_three_days_ago_and_left_open_is_stopped_from_filling() =>
        Assert.Equal(
            ["sanitizing-lapsed"],
            Asked(After([.. Ready, Opened(9)]), 80, Steel with { IsOpenType = true }).Codes()
        );

    [Fact]
    public void A_tank_opened_since_it_was_sanitized_is_sanitized_again()
    {
        Assert.Equal(["opened-since-sanitized"], Asked(After([.. Ready, Opened(9)]), 9.5).Codes());
        Assert.Empty(Asked(After([.. Ready, Opened(9)]), 9.5, Steel with { IsOpenType = true }));
    }

    [Fact]
    public void Vented_for_two_hours_before_filling_a_tank_under_gas_uses_nothing_up()
    {
        LogEntry[] log = [.. Ready.SkipLast(1), Drained(8, Closure.Sealed, underGas: true), Vented(80)]; // 72 h

        Assert.Empty(Asked(After(log), 82));
        Assert.Equal(["sanitizing-lapsed"], Asked(After(log), At(82, minutes: 1)).Codes());
    }

    public static readonly TheoryData<string[], Level?, LogEntry[]> Films = new()
    {
        { [], null, [Passivated(1), AirDried(2)] },
        { ["never-passivated"], Level.Stop, [] },
        { ["never-passivated"], Level.Stop, [Passivated(1)] }, // not dried
        { ["film-hurt"], Level.Stop, [Passivated(1), AirDried(2), Triggered(3)] },
        { ["film-hurt"], Level.Stop, [Passivated(1), AirDried(2), Triggered(3), Passivated(4)] },
        { [], null, [Passivated(1), AirDried(2), Triggered(3), Passivated(4), AirDried(5)] },
        { ["passivation-unknown"], Level.Caution, [Then(1, new TankTakenOver(K3.Id))] },
        { ["never-passivated"], Level.Stop, [Then(1, new TankTakenOver(K3.Id) { IsNeverPassivated = true })] },
    };

    [Theory]
    [MemberData(nameof(Films))]
    public void Steel_wants_a_film_that_dried_since_it_was_new_or_hurt(string[] codes, Level? level, LogEntry[] log)
    {
        var objections = Others(Asked(After(log), 9));

        Assert.Equal(codes, objections.Codes());
        Assert.Equal(level, objections.Select(o => (Level?)o.Level).SingleOrDefault());
    }

    [Theory]
    [InlineData(2, false)] // dried on 2 March, seldom used: due on 2 July
    [InlineData(3, true)]
    public void A_film_past_its_day_is_a_caution_with_both_days(int dayOfJuly, bool cautioned)
    {
        var at = new DateTimeOffset(2026, 7, dayOfJuly, 10, 0, 0, TimeSpan.FromHours(2));

        Assert.Equal(
            cautioned
                ?
                [
                    Objection.Caution(
                        "passivation-overdue",
                        new("tank", "K3"),
                        new("dried", new DateOnly(2026, 3, 2)),
                        new("due", new DateOnly(2026, 7, 2))
                    ),
                ]
                : [],
            Others(Asked(After(Passivated(1), AirDried(2)), at))
        );
    }

    [Fact]
    public void Plastic_has_no_film() => Assert.Empty(Others(Asked(After(), 9, Plastic)));

    [Theory]
    [InlineData(19, 422.1875)] // 101.325 kPa of 25 L in 6 L: 4.2 bar absolute
    [InlineData(12.5, 202.65)] // half the room, twice the pressure
    public void The_vent_is_shut_and_this_is_the_pressure_it_would_make(double litres, double kPa)
    {
        var objection = Asked(After([.. Ready, Closed(8.5)]), At(9), Steel, litres).Single();

        Assert.Equal(("vent-closed", Level.HardStop), (objection.Code, objection.Level));
        Assert.Equal(kPa, ((Pressure)objection.Numbers.Single(n => n.Name is "absolute").Value!).Kilopascals, 1e-6);
    }

    [Fact]
    public void Under_gas_already_it_would_make_more()
    {
        var objection = Asked(After([.. Ready, Closed(8.5, Closure.Sealed), Read(8.6, 100)]), At(9), Steel, 19)
            .Single();

        Assert.Equal(
            (101.325 + 100) * 25 / 6, // Boyle by hand
            ((Pressure)objection.Numbers.Single(n => n.Name is "absolute").Value!).Kilopascals,
            1e-6
        );
    }

    [Fact]
    public void No_number_is_given_where_there_is_no_room_at_all() =>
        Assert.Equal(["vent-closed-no-room"], Asked(After([.. Ready, Closed(8.5)]), At(9), Steel, 25).Codes());

    [Fact]
    public void An_exposed_tank_takes_no_beer_until_it_is_clear_and_plastic_never_is()
    {
        LogEntry[] exposed = [Exposed(-20)];
        LogEntry[] cleared = [Exposed(-20), Cleared(-19), Washed(-12), Rinsed(-11), .. Ready];

        Assert.Equal(["exposed-mixed-culture"], Asked(After([.. exposed, .. Ready]), 9).Codes());
        Assert.Empty(Asked(After(cleared), 9));
        Assert.Equal(["exposed-mixed-culture"], Asked(After(cleared), 9, Plastic).Codes());
    }

    [Fact]
    public void An_allergen_is_named()
    {
        var tank = After([Exposed(-20, ExposureKind.Allergen, "hazelnut"), .. Ready]);

        Assert.Equal(
            [Objection.Stop("exposed-allergen", new("tank", "K3"), new("since", At(-20)), new("what", "hazelnut"))],
            Asked(tank, 9)
        );
    }

    [Fact]
    public void Wheat_after_wheat_is_no_stop_and_wheat_after_hazelnut_is()
    {
        var tank = After([Exposed(-20, ExposureKind.Allergen, "wheat"), .. Ready]);

        Assert.Empty(ReadyToFill.Objections(K3, tank, Rules, At(9), Litres(18), "Wheat"));
        Assert.Equal(
            ["exposed-allergen"],
            ReadyToFill.Objections(K3, tank, Rules, At(9), Litres(18), "hazelnut").Select(o => o.Code)
        );
    }

    private static readonly Tank Steel = K3;

    private static Listed<Objection> Asked(TankState state, double hour, Tank? tank = null) =>
        Asked(state, At(hour), tank);

    private static Listed<Objection> Asked(TankState state, DateTimeOffset at, Tank? tank = null, double litres = 18) =>
        [.. ReadyToFill.Objections(tank ?? Steel, state, Rules, at, Litres(litres))];

    // What is said besides the sanitizing that these logs leave out.
    private static Listed<Objection> Others(Listed<Objection> objections) =>
        objections.Without(o => o.Code is "not-sanitized");

    [Fact]
    public void A_tank_is_ready_when_nothing_but_its_vent_stands_in_the_way()
    {
        var sealedUp = After([.. Ready, Purged(8.5, 50), Closed(8.6, Closure.Sealed)]);

        Assert.True(IsReady(sealedUp));
        Assert.False(IsReady(After([.. Ready, Triggered(8.5)])));
        Assert.False(IsReady(After([.. Ready, Then(8.5, new PutOutOfService(K3.Id, "leg bent"))])));
        Assert.False(IsReady(After([.. Ready, PartsOff(8.5)])));
        Assert.False(IsReady(After([.. Ready, Exposed(8.5)])));

        static bool IsReady(TankState tank) => ReadyToFill.IsReady(K3, tank, Rules, At(9));
    }
}
