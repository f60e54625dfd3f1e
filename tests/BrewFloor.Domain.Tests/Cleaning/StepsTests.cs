using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Log;
using UnitsNet;
using static BrewFloor.Domain.Tests.Cleaning.CleaningLogs;

namespace BrewFloor.Domain.Tests.Cleaning;

public class StepsTests
{
    private static readonly LogEntry[] Ready = [Washed(-8), Rinsed(-7), Inspected(-6)];

    public static readonly TheoryData<LogEntry> AllSteps =
    [
        Rinsed(1),
        Washed(1),
        Sanitized(1),
        Passivated(1),
        AirDried(1),
    ];

    [Theory]
    [MemberData(nameof(AllSteps))]
    public void No_step_of_cleaning_goes_into_beer(LogEntry step)
    {
        var objection = After(Ready).WithBeer().Says(step).Single();

        Assert.Equal(("holds-beer", Level.Stop), (objection.Code, objection.Level));
    }

    public static readonly TheoryData<bool, LogEntry[]> Grounds = new()
    {
        { true, Ready },
        { true, [.. Ready, Sanitized(-5), Drained(-4)] }, // sanitized already
        { true, [.. Ready, Sanitized(-90), Drained(-80)] }, // lapsed: clean
        { true, [Passivated(-3), AirDried(-2)] },
        { false, [] }, // nobody knows
        { false, [Washed(-8), Rinsed(-7)] }, // nobody looked
        { false, [Washed(-8), Rinsed(-7), Inspected(-6, passed: false)] },
        { false, [Rinsed(-7), Inspected(-6)] }, // not washed
    };

    [Theory]
    [MemberData(nameof(Grounds))]
    public void Only_what_was_washed_rinsed_and_looked_at_is_sanitized(bool taken, LogEntry[] log) =>
        Assert.Equal(taken ? [] : ["not-clean"], After(log).Says(Sanitized(1)).Codes());

    [Theory]
    [InlineData(Agent.AcidAnionic, Way.SprayBall, "foams-through-spray-ball")]
    [InlineData(Agent.Iodophor, Way.SprayBall, "foams-through-spray-ball")]
    [InlineData(Agent.AcidAnionic, Way.Soak, null)]
    [InlineData(Agent.Peracetic, Way.SprayBall, null)]
    [InlineData(Agent.Alkaline, Way.Soak, "no-sanitizer")]
    public void Foam_does_not_go_through_a_spray_ball_nor_cleaner_for_sanitizer(Agent agent, Way how, string? code) =>
        Assert.Equal(code, After(Ready).Says(Sanitized(1, agent, how)).Codes().SingleOrDefault());

    [Fact]
    public void Parts_off_stop_sanitizing_and_a_tank_not_leak_tested_is_a_caution()
    {
        Assert.Equal(["parts-off"], After([.. Ready, PartsOff(-3)]).Says(Sanitized(1)).Codes());

        var caution = After([.. Ready, PartsOff(-3), Refitted(-2)]).Says(Sanitized(1)).Single();
        Assert.Equal(("not-leak-tested", Level.Caution), (caution.Code, caution.Level));
        Assert.Empty(After([.. Ready, PartsOff(-3), Refitted(-2), LeakTested(-1)]).Says(Sanitized(1)));
    }

    [Theory]
    [InlineData(null, 5, true)] // the family of peracetic wants 5 minutes
    [InlineData(null, 4, false)]
    [InlineData(2.0, 2, true)] // its own label comes first
    [InlineData(10.0, 9, false)]
    public void The_contact_time_is_judged_when_it_is_drained(double? label, double minutes, bool taken)
    {
        var sanitized = Sanitized(1) with { LabelMinutes = label is { } l ? Duration.FromMinutes(l) : null };
        var drained = Drained(1) with { At = At(1, minutes) };

        Assert.Equal(
            taken
                ? []
                :
                [
                    Objection.Caution(
                        "contact-short",
                        new("tank", "K3"),
                        new("contact", Duration.FromMinutes(minutes)),
                        new("least", Duration.FromMinutes(label ?? 5))
                    ),
                ],
            After([.. Ready, sanitized]).Says(drained)
        );
    }

    [Fact]
    public void What_isnt_in_a_tank_is_not_drained_from_it()
    {
        Assert.Equal(["nothing-to-drain"], After(Ready).Says(Drained(1)).Codes());
        Assert.Equal(["nothing-to-drain"], After(Ready).WithBeer().Says(Drained(1)).Codes());
    }

    [Fact]
    public void A_bath_wants_steel_that_was_washed_and_rinsed()
    {
        Assert.Empty(After(Ready).Says(Passivated(1)));
        Assert.Empty(After(Washed(-8), Rinsed(-7)).Says(Passivated(1)));
        Assert.Equal(["not-washed"], After(Rinsed(-7)).Says(Passivated(1)).Codes());
        Assert.Equal(["not-washed"], After(Washed(-7)).Says(Passivated(1)).Codes()); // cleaner on its walls
        Assert.Equal(["nothing-to-passivate"], After(Ready).Says(Passivated(1), Plastic).Codes());
    }

    public static readonly TheoryData<LogEntry> Liquids = [Rinsed(1), Washed(1), Sanitized(1)];

    [Theory]
    [MemberData(nameof(Liquids))]
    public void Who_wets_a_bath_that_has_not_dried_is_told(LogEntry liquid) =>
        Assert.Equal(["voids-bath"], After([.. Ready, Passivated(0)]).Says(liquid).Codes());

    [Fact]
    public void A_tank_with_liquid_in_it_is_not_dry()
    {
        Assert.Equal(["liquid-in"], After([.. Ready, Sanitized(0)]).Says(AirDried(1)).Codes());
        Assert.Equal(["liquid-in"], After([.. Ready, Washed(0)]).Says(AirDried(1)).Codes());
        Assert.Empty(After([.. Ready, Passivated(0)]).Says(AirDried(1)));
    }

    [Fact]
    public void What_a_tank_never_met_it_is_not_cleared_of_and_plastic_never_clears()
    {
        Assert.Equal(["not-exposed"], After().Says(Cleared(1)).Codes());
        Assert.Empty(After(Exposed(0)).Says(Cleared(1)));
        Assert.Equal(["plastic-never-clears"], After(Exposed(0)).Says(Cleared(1), Plastic).Codes());
    }
}
