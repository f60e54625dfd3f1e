using BrewFloor.Brewing.Calculators;
using BrewFloor.Brewing.Tanks;
using UnitsNet;
using Measure = BrewFloor.Brewing.Calculators.Measure;

namespace BrewFloor.Brewing.Tests.Calculators;

/// <summary>Questions with answers worked out beforehand.</summary>
public class CalculatorTests
{
    [Fact] // a million cells in 100 L of 12 °P are 1.2e12; at 1.2e9 in a mL of which 90 % live: 1.11 L
    public void Slurry_that_nobody_counted_is_told_within_a_wide_range()
    {
        var answer = Ask("slurry", ("wort", 100), ("original-gravity", 1.04836), ("viability", 90));

        var slurry = answer.Results[0];
        Assert.Equal(1.111, slurry.Value.Value, 0.002);
        Assert.Equal((0.444, 2.666), (Math.Round(slurry.Low!.Value.Value, 3), Math.Round(slurry.High!.Value.Value, 3)));
        Assert.Equal("slurry-not-counted", Assert.Single(answer.Findings).Code);
    }

    [Fact]
    public void Slurry_that_was_counted_is_told_without_one()
    {
        var answer = Ask("slurry", ("slurry-density", 1200), ("viability", 92));

        Assert.Null(answer.Results[0].Low);
        Assert.Empty(answer.Findings);
        Assert.Equal("viability-not-counted", Assert.Single(Ask("slurry", ("slurry-density", 1200)).Findings).Code);
    }

    [Fact] // checks CO-22 and CO-23: 0.58 bar absolute, 125 g
    public void A_tank_sealed_at_no_pressure_and_crashed_pulls_a_vacuum()
    {
        var answer = Ask("sealed-crash", ("beer", 90), ("headspace", 10), ("crash-temperature", 1), ("hold", 0));

        Assert.Equal(58 - 101.325, answer.Results[0].Value.Value, 1.5);
        Assert.Equal(0.125, answer.Results[2].Value.Value, 0.005);
        Assert.Equal(Weight.Danger, Assert.Single(answer.Findings).Weight);
    }

    [Fact] // check EX-12
    public void Alcohol_follows_from_two_gravities()
    {
        var answer = Ask("alcohol", ("original-gravity", 1.04836), ("final-gravity", 1.00976)); // 12 and 2.5 °P

        Assert.Equal(5.07, answer.Results[0].Value.Value, 0.01);
        Assert.True(answer.Results[0].Low!.Value.Value < answer.Results[0].Value.Value);
    }

    [Theory] // 2.5 vol at 4 °C hold 0.815 bar: check TR-02
    [InlineData(92, null)]
    [InlineData(90, "near-rating")] // 90 % of it, common practice
    [InlineData(81, "over-rating")]
    public void A_pressure_is_held_against_what_the_tank_bears(double rating, string? finding) =>
        Assert.Equal(
            finding,
            Ask("pressure", ("carbonation", 2.5), ("temperature", 4), ("rating", rating))
                .Findings.SingleOrDefault()
                ?.Code
        );

    [Theory] // 54 FR 2332, HSE EH40, ACGIH, NIOSH: check CI-06
    [InlineData(4999, null)]
    [InlineData(5001, "room-over-limit")]
    [InlineData(15_001, "room-over-quarter-hour")]
    [InlineData(30_001, "room-over-short-term")]
    [InlineData(40_001, "room-deadly")]
    [InlineData(2_000_000, "room-deadly")] // more gas than room
    public void A_room_is_held_against_every_limit(double ppm, string? finding)
    {
        var kilograms = ppm / 1e6 * 60 * 44.0095 / (24.055 * (273.15 + 18) / 293.15); // into 60 m³ at 18 °C

        var answer = Ask("room", ("released", kilograms), ("room-size", 60), ("temperature", 18), ("outside", 0));

        Assert.Equal(finding, answer.Findings.SingleOrDefault()?.Code);
    }

    [Fact] // 0.04 vol or 3 %: one standard error of our fit to the printed chart
    public void Gas_in_beer_is_told_within_three_percent()
    {
        var gas = Ask("carbonation", ("temperature", 4), ("pressure-gauge", 100)).Results[0];

        Assert.Equal((0.97, 1.03), (gas.Low!.Value.Value / gas.Value.Value, gas.High!.Value.Value / gas.Value.Value));
    }

    [Fact]
    public void Additions_of_nothing_leave_the_gravity_and_sugar_raises_it()
    {
        var alone = Ask("additions", ("original-gravity", 1.048)).Results[0].Value.Value;
        var sweet = Ask("additions", ("original-gravity", 1.048), ("sugar", 2)).Results[1].Value.Value;

        Assert.Equal(1.048, alone, 0.00002);
        Assert.Equal(((104.61 * 11.91) + 200) / 106.61, sweet, 0.01); // kg and °P
    }

    [Fact]
    public void A_refusal_on_the_way_names_what_was_asked_and_the_range()
    {
        var calculator = AllCalculators.ByName["spunding"];

        var refusal = calculator.Answer(Given.NothingTo(calculator).With("carbonation", 6)).Refusal;

        Assert.Equal(("out-of-range", "carbonation", "vol"), (refusal!.Code, refusal.What, refusal.Unit));
    }

    [Fact]
    public void A_number_outside_is_refused_in_the_unit_it_was_given_in()
    {
        var input = AllCalculators.ByName["carbonation"].Inputs.OfType<QuantityInput>().First();
        var fahrenheit = Measure.Temperature.Find("°F")!;

        var refusal = input.RefusalOf(new Figure(fahrenheit.ToFirst(120), Measure.Temperature), fahrenheit);

        Assert.Equal(("32", "104", "°F"), (refusal!.From, refusal.To, refusal.Unit));
        Assert.Null(input.RefusalOf(new Figure(4, Measure.Temperature), Measure.Temperature.First));
    }

    [Theory]
    [InlineData("volume", "gal", 1, 3.785411784)]
    [InlineData("volume", "bbl", 1, 117.347765)] // of beer: 31 US gallons
    [InlineData("pressure", "psi", 1, 6.894757)]
    [InlineData("temperature", "°F", 50, 10)]
    [InlineData("gravity", "°P", 12, 1.04838)]
    [InlineData("carbonation", "g/L", 1.9635, 1)]
    [InlineData("heat", "kWh", 1, 3.6)]
    [InlineData("power", "W", 1500, 1.5)]
    public void Units_are_what_they_are_everywhere(string measure, string unit, double value, double inFirst)
    {
        var found = Measures().First(m => string.Equals(m.Name, measure, StringComparison.Ordinal)).Find(unit)!;

        Assert.Equal(inFirst, found.ToFirst(value), Math.Abs(inFirst) * 1e-5);
        Assert.Equal(value, found.FromFirst(found.ToFirst(value)), Math.Abs(value) * 1e-3);
    }

    [Fact]
    public void A_tank_of_the_floor_is_asked_about_in_its_own_shape()
    {
        DishKind[] dishes = Enum.GetValues<DishKind>();
        VesselBottom[] bottoms =
        [
            new ConeBottom(Angle.FromDegrees(72)),
            new ConeBottom(Height: Length.FromMillimeters(400)),
            new FlatBottom(),
            .. dishes.Select(dish => new DishedBottom(dish)),
        ];
        VesselHead[] heads = [new FlatLid(), .. dishes.Select(dish => new DishedHead(dish))];

        Assert.All(bottoms.SelectMany(bottom => heads.Select(head => Shaped(bottom, head))), SameTotal);

        static void SameTotal(VesselShape shape)
        {
            var calculator = AllCalculators.ByName["dip"];
            var results = calculator.Answer(Given.NothingTo(calculator).With(shape)).Value.Results;
            Assert.Equal(
                shape.Total.Liters,
                results.First(result => result.Name is "tank-total").Value.Value,
                1e-6 * shape.Total.Liters
            );
        }
    }

    private static VesselShape Shaped(VesselBottom bottom, VesselHead head) =>
        VesselShape
            .Measured(
                Length.FromMillimeters(800),
                Length.FromMillimeters(900),
                bottom,
                Length.FromMillimeters(50),
                head
            )
            .Value;

    private static IEnumerable<Measure> Measures() =>
        AllCalculators
            .All.SelectMany(c =>
                c.Inputs.OfType<QuantityInput>()
                    .Select(i => i.Measure)
                    .Concat(c.Answer(Given.NothingTo(c)).Value.Results.Select(r => r.Value.Measure))
            )
            .Distinct();

    private static Answer Ask(string name, params (string Name, double Value)[] given)
    {
        var calculator = AllCalculators.ByName[name];
        return calculator
            .Answer(given.Aggregate(Given.NothingTo(calculator), (all, one) => all.With(one.Name, one.Value)))
            .Value;
    }
}
