using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Log;
using static BrewFloor.Domain.Tests.Cleaning.CleaningLogs;

namespace BrewFloor.Domain.Tests.Cleaning;

public class SteelTests
{
    [Fact]
    public void The_film_counts_from_the_drying_and_knows_its_bath()
    {
        var tank = After(Passivated(1), Drained(2), AirDried(9));

        Assert.Equal((At(9), BathKind.Citric), (tank.Dried!.Value.At, tank.DriedAfter));
        Assert.Null(tank.Bath);
    }

    public static readonly TheoryData<LogEntry> Liquids = [Rinsed(2), Washed(2), Sanitized(2)];

    [Theory]
    [MemberData(nameof(Liquids))]
    public void Any_liquid_between_bath_and_drying_voids_the_bath(LogEntry liquid) =>
        Assert.Null(After(Passivated(1), liquid, AirDried(3)).Dried);

    [Fact]
    public void The_practices_own_rinse_recorded_with_the_bath_does_not() =>
        Assert.NotNull(After(Passivated(1, rinsed: true), AirDried(3)).Dried);

    [Fact]
    public void Drying_without_a_bath_makes_no_film() => Assert.Null(After(AirDried(1)).Dried);

    [Fact]
    public void A_later_wash_leaves_the_film_alone() =>
        Assert.Equal(At(2), After(Passivated(1), AirDried(2), Washed(3), Rinsed(4)).Dried!.Value.At);

    [Fact]
    public void A_new_film_starts_counting_its_fillings_anew()
    {
        var filled = After(Passivated(1), AirDried(2)) with { FilledSinceDried = [At(3)] };

        Assert.Empty(filled.Then(Passivated(5), AirDried(6)).FilledSinceDried);
    }

    [Fact]
    public void What_hurt_the_steel_before_the_bath_is_healed_and_a_scratch_after_it_is_not()
    {
        var tank = After(Triggered(0), Passivated(1), Triggered(2, Trigger.Scratch), AirDried(3));

        Assert.Equal([Trigger.Scratch], tank.FilmHurt.Select(hurt => hurt.By));
    }

    [Fact]
    public void Rust_seen_every_day_is_one_hurt_since_the_first_day() =>
        Assert.Equal([At(1)], After(Triggered(1), Triggered(25), Triggered(49)).FilmHurt.Select(h => h.Moment.At));

    [Fact]
    public void Chlorine_through_a_tank_is_a_chloride_to_its_steel() =>
        Assert.Equal([Trigger.Chloride], After(Washed(1, Agent.Chlorinated)).FilmHurt.Select(h => h.By));
}
