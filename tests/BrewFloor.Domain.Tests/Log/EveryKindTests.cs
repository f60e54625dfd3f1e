using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using static BrewFloor.Domain.Tests.Yeast.YeastLogs;

namespace BrewFloor.Domain.Tests.Log;

public class EveryKindTests
{
    private static readonly Floor Retired = TheFloor(new TankState(K3.Id)) with
    {
        Tanks = [(K3 with { RetiredOn = new(2026, 2, 1) }, new TankState(K3.Id))],
    };

    [Fact]
    public void A_retired_tank_says_so_before_anything_else() =>
        Assert.Equal(
            Objection.Impossible("tank-retired", new("tank", "K3"), new("retired", new DateOnly(2026, 2, 1))),
            On(1, new Filled(K3.Id, Batch118.Id, Litres(90))).JudgedOn(Retired).Objections[0]
        );

    [Fact]
    public void A_tank_in_the_inventory_says_nothing_of_the_kind() =>
        Assert.DoesNotContain("tank-retired", On(1, new Vented(K3.Id)).JudgedOn(TheFloor()).Codes());

    [Fact]
    public void A_retired_tank_still_takes_notes_corrections_and_strikes()
    {
        var filled = On(1, new Filled(K3.Id, Batch118.Id, Litres(90)));
        LogEntry[] mending =
        [
            new Noted(Subject.Tank(K3.Id)),
            new Corrected(filled.Id, filled, "it was 90 L"),
            new Struck([filled.Id], "it was the other tank") { Touched = [.. filled.Subjects] },
        ];

        Assert.All(mending, entry => Assert.DoesNotContain("tank-retired", entry.JudgedOn(Retired).Codes()));
        Assert.DoesNotContain(
            "tank-retired",
            new Corrected(filled.Id, filled, "90 L").StandingJudgedOn(Retired).Codes()
        );
    }

    [Fact]
    public void A_caution_the_club_switched_off_is_not_heard_and_a_stop_of_that_name_is()
    {
        var quiet = Rules with { SilentCautions = ["over-working"] };

        Assert.True(quiet.Silences(Objection.Caution("over-working")));
        Assert.False(quiet.Silences(Objection.Stop("over-working")));
        Assert.False(Rules.Silences(Objection.Caution("over-working")));
    }
}
