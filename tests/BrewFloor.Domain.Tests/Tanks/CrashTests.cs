using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using UnitsNet;
using static BrewFloor.Domain.Tests.Tanks.BeerLogs;
using static BrewFloor.Domain.Tests.Tanks.TankLogs;

namespace BrewFloor.Domain.Tests.Tanks;

public class CrashTests
{
    /// <summary>90 L of beer under 10 L of CO2 at 20 °C, sealed at no pressure: the tank of check CO-22.</summary>
    private static readonly Floor Sealed = After(FilledAt(1.050, 90).On(0), Read(20).On(1))
        .Where(K3 with { Strapping = Straight(100), Working = L(90) })
        .Standing(K3, BeerTests.SealedAtNone);

    [Fact]
    public void A_sealed_tank_at_no_pressure_ends_in_a_vacuum()
    {
        var caution = Sealed.Says(SetTo(1, batch: Batch118).On(10)).About("crash-vacuum")!;

        // CO-22 and CO-23: 0.58 bar absolute, and about 125 g of CO2 hold one atmosphere
        Assert.Equal(Level.Caution, caution.Level);
        Assert.Equal(0.58, Of<Pressure>(caution, "end_absolute").Bars, 0.01);
        Assert.Equal(125, Of<Mass>(caution, "needed").Grams, 5.0);
    }

    [Fact]
    public void Enough_pressure_ends_above_the_air()
    {
        // 0.58 bar absolute of 1.013 at the start: it takes 1.77 bar absolute (76 kPa gauge) to end at the air's own
        var held = Sealed.Standing(K3, t => BeerTests.Sealed(t, 90));
        var tooLittle = Sealed.Standing(K3, t => BeerTests.Sealed(t, 60));

        Assert.Null(held.Says(SetTo(1, batch: Batch118).On(10)).About("crash-vacuum"));
        Assert.NotNull(tooLittle.Says(SetTo(1, batch: Batch118).On(10)).About("crash-vacuum"));
    }

    [Fact]
    public void Warming_an_open_vent_and_an_empty_tank_pull_no_vacuum()
    {
        Assert.Empty(Vacuums(Sealed, SetTo(22, batch: Batch118)));
        Assert.Empty(Vacuums(Sealed.Standing(K3, t => t with { Closure = Closure.Vented }), SetTo(1, batch: Batch118)));
        Assert.Empty(Vacuums(NewFloor.Standing(K3, BeerTests.SealedAtNone), SetTo(1)));
    }

    [Fact]
    public void A_pressure_nobody_knows_is_said_without_numbers() =>
        Assert.Equal(
            ["crash-pressure-unknown"],
            Vacuums(Sealed.Standing(K3, t => t with { IsPressureInDoubt = true }), SetTo(1, batch: Batch118))
        );

    [Fact]
    public void Litres_or_warmth_nobody_knows_leave_the_numbers_out()
    {
        var unmeasured = After(BatchTakenOver(null).On(0), Read(20).On(1)).Standing(K3, BeerTests.SealedAtNone);
        var unread = After(Filled(90).On(0)).Standing(K3, BeerTests.SealedAtNone);

        Assert.Equal(["crash-vacuum-unknown"], Vacuums(unmeasured, SetTo(1, batch: Batch118)));
        Assert.Equal(["crash-vacuum-unknown"], Vacuums(unread, SetTo(1, batch: Batch118)));
    }

    [Theory]
    // 12 °P to 2.5 °P: A = 4.02 % w/w, ice at -(0.42 x 4.02 + 0.04 x 12 + 0.2) = -2.37 °C, so no colder than -0.87 °C
    [InlineData(-0.8, null)]
    [InlineData(-1.0, Level.Stop)]
    public void No_set_point_within_1_5_K_of_ice(double set, Level? level)
    {
        var floor = After(FilledAt(1.04836).On(0), Gravity(1.00977).On(9), Read(15).On(9));

        Assert.Equal(level, floor.Says(SetTo(set, batch: Batch118).On(10)).LevelOf("would-freeze"));
    }

    [Theory]
    // no alcohol yet: ice at -(0.04 x 12 + 0.2) = -0.68 °C, so no colder than 0.82 °C
    [InlineData(0.9, null)]
    [InlineData(0.7, Level.Stop)]
    public void Unfermented_wort_freezes_sooner(double set, Level? level) =>
        Assert.Equal(
            level,
            After(FilledAt(1.04836).On(0)).Says(SetTo(set, batch: Batch118).On(1)).LevelOf("would-freeze")
        );

    [Theory]
    [InlineData(1.3, null)] // 1.5 K above -0.2 °C
    [InlineData(1.2, Level.Caution)]
    public void Beer_of_an_unknown_gravity_is_cautioned_as_if_it_were_almost_water(double set, Level? level)
    {
        var verdict = After(Filled(900).On(0)).Says(SetTo(set, batch: Batch118).On(1));

        Assert.Equal(level, verdict.LevelOf("freezing-unknown"));
        Assert.Null(verdict.About("would-freeze"));
    }

    private static IEnumerable<string> Vacuums(Floor floor, TemperatureSet set) =>
        floor.Says(set.On(10)).Codes().Where(code => code.StartsWith("crash", StringComparison.Ordinal));

    private static T Of<T>(Objection objection, string name) =>
        (T)objection.Numbers.Single(n => name.Equals(n.Name, StringComparison.Ordinal)).Value!;

    [Fact]
    public void How_cold_the_beer_before_was_says_nothing_of_this_one()
    {
        var refilled = After(FilledAt(1.050, 90).On(0), Read(2).On(9), Emptied().On(10), Filled(90).On(11))
            .Where(K3 with { Strapping = Straight(100), Working = L(90) })
            .Standing(K3, BeerTests.SealedAtNone);
        var warm = refilled.And(Read(20).On(12));

        Assert.Null(refilled.Of(K3).Temperature);
        Assert.Equal(["crash-vacuum-unknown"], Vacuums(refilled, SetTo(4, batch: Batch118)));
        Assert.Equal(["crash-vacuum"], Vacuums(warm, SetTo(4, batch: Batch118)));
    }

    [Fact]
    public void What_was_typed_with_the_wort_is_its_temperature() =>
        Assert.Equal(C(18), After((Filled(90) with { Temperature = C(18) }).On(0)).Of(K3).Temperature?.Value);
}
