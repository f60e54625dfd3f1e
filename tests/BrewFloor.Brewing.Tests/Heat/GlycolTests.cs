using BrewFloor.Brewing.Heat;
using CsCheck;
using UnitsNet;
using static BrewFloor.Brewing.Tests.Carbonation.GasWords;
using static BrewFloor.Brewing.Tests.Extract.Words;

namespace BrewFloor.Brewing.Tests.Heat;

public class GlycolTests
{
    private static TankLoad Load(double heat, double gain = 0, double crash = 0) =>
        new(Power.FromWatts(heat), Power.FromWatts(gain), Energy.FromKilojoules(crash));

    private static CoolingPlan Plan(double watts, params TankLoad[] tanks) =>
        CoolingPlan.Of(Power.FromWatts(watts), tanks).Value;

    [Theory] // an equipment maker's table; Lange's Handbook
    [Check("HE-07", "HE-08", "HE-09", "HE-10")]
    public void Glycol_by_its_strength(Check check)
    {
        var glycol = Glycol.Of(Abw(double.Parse(check.Input.Split(' ')[0], Invariant))).Value;

        check.Agrees(
            glycol.Freezing.DegreesCelsius,
            glycol.SpecificHeat.KilojoulesPerKilogramKelvin,
            glycol.Density.KilogramsPerCubicMeter
        );
    }

    [Theory] // Lange's Handbook, by volume
    [Check("HE-21")]
    public void Glycol_by_volume_is_nearly_the_same(Check check) =>
        check.Agrees(
            Glycol.Of(Abw(30)).Value.Freezing.DegreesCelsius,
            Glycol.Of(Abw(40)).Value.Freezing.DegreesCelsius
        );

    [Theory] // arithmetic
    [Check("HE-11")]
    public void A_bath_holds_some_cold(Check check) =>
        check.Agrees(Glycol.Of(Abw(35)).Value.Takes(Litres(30), TemperatureDelta.FromKelvins(5)).Value.Kilojoules);

    [Theory] // arithmetic
    [Check("HE-23")]
    public void And_lasts_an_hour_and_a_half(Check check) =>
        check.Agrees(Plan(0, Load(100)).BathLasts(Energy.FromKilojoules(581)).Value.Minutes);

    [Fact]
    public void Stronger_freezes_later_and_the_strength_for_a_cold_is_enough() =>
        Gen.Double[-16, 5]
            .Sample(coldest =>
            {
                var strength = Glycol.For(Celsius(coldest), Glycol.Margin).Value;
                var freezing = Glycol.Of(strength).Value.Freezing.DegreesCelsius;
                Assert.True(freezing <= coldest - 5 + 1e-9);
                Assert.True(strength.Percent is 20 || Math.Abs(freezing - (coldest - 5)) < 1e-6);
            });

    [Fact]
    public void What_cannot_be_is_refused()
    {
        Assert.Equal(OutOfRange("glycol", "20", "40", "%"), Glycol.Of(Abw(19)).Refusal);
        Assert.Equal("coldest", Glycol.For(Celsius(-17), Glycol.Margin).Refusal?.What);
        Assert.Equal("coldest", Glycol.For(Celsius(-14), Glycol.EvaporatorMargin).Refusal?.What);
        Assert.Equal("margin", Glycol.For(Celsius(0), TemperatureDelta.FromKelvins(16)).Refusal?.What);
        Assert.Equal("bath", Glycol.Of(Abw(30)).Value.Takes(Litres(-1), default).Refusal?.What);
        Assert.Equal("chiller", CoolingPlan.Of(Power.FromWatts(-1), []).Refusal?.What);
        Assert.Equal(("crash", 2), (Bad()?.What, Bad()?.Row));

        static Refusal? Bad() => CoolingPlan.Of(Power.Zero, [Load(1), Load(1, 0, -1)]).Refusal;
    }

    [Fact]
    public void Tanks_on_one_chiller_add_up()
    {
        var plan = Plan(1000, Load(300, 50), Load(200, 50), Load(0, 50, 7363)); // 350 W to spare

        Assert.Equal((650.0, 350.0), (plan.Steady.InWatts(), Math.Round(plan.Spare.InWatts(), 9)));
        Assert.True(plan.Holds);
        Assert.Equal(7363 / 0.35 / 3600, plan.TimeToCrash(Energy.Zero).Value.Hours, 1e-9);
        Assert.Equal((7363 - 581) / 0.35 / 3600, plan.TimeToCrash(Energy.FromKilojoules(581)).Value.Hours, 1e-9);
        Assert.Equal(0, plan.TimeToCrash(Energy.FromKilojoules(8000)).Value.Hours);
        Assert.Equal("load-over-chiller", plan.BathLasts(Energy.Zero).Refusal?.What);
    }

    [Fact]
    public void A_chiller_that_is_too_weak_says_so()
    {
        var plan = Plan(100, Load(300, 50, 1000));

        Assert.False(plan.Holds);
        Assert.Equal("chiller-to-spare", plan.TimeToCrash(Energy.Zero).Refusal?.What);
        Assert.Equal(1000 / 0.25 / 3600, plan.BathLasts(Energy.FromKilojoules(1000)).Value.Hours, 1e-9);
        Assert.Equal("bath", plan.BathLasts(Energy.FromKilojoules(-1)).Refusal?.What);
        Assert.Equal("bath", plan.TimeToCrash(Energy.FromKilojoules(-1)).Refusal?.What);
    }
}
