using BrewFloor.Brewing.Extract;
using CsCheck;
using UnitsNet;
using static BrewFloor.Brewing.Tests.Extract.Words;

namespace BrewFloor.Brewing.Tests.Extract;

public class MixedWortTests
{
    private static ExtractAddition Kg(double mass, double percent) => new(Mass.FromKilograms(mass), Abw(percent));

    [Theory] // mass balance
    [Check("EX-34")]
    public void Wort_and_sugar_and_water_make_one_original_extract(Check check)
    {
        var mixed = MixedWort.Of([Kg(100, 12), Kg(5, 100), Kg(20, 0)]).Value;

        check.Agrees(mixed.Original.Value, mixed.Mass.Kilograms);
    }

    [Fact]
    public void The_order_of_additions_does_not_count() =>
        Gen.Select(Gen.Double[0.1, 100], Gen.Double[0, 100])
            .Array[2, 5]
            .Sample(parts =>
            {
                var additions = parts.Select(p => Kg(p.Item1, p.Item2)).ToArray();
                var (there, back) = (MixedWort.Of(additions).Value, MixedWort.Of(additions.Reverse()).Value);
                Assert.Equal(there.Original.Value, back.Original.Value, 1e-9);
                Assert.InRange(there.Original.Value, parts.Min(p => p.Item2) - 1e-9, parts.Max(p => p.Item2) + 1e-9);
            });

    [Fact]
    public void An_addition_that_cannot_be_is_refused_by_its_row()
    {
        Assert.Equal(OutOfRange("extract", "0", "100", "%") with { Row = 2 }, Of(Kg(1, 12), Kg(1, 101)));
        Assert.Equal("mass", Of(Kg(-1, 12))?.What);
        Assert.Equal(new Refusal("out-of-range", "mass", "0.001", "", "kg"), Of());
    }

    private static Refusal? Of(params ExtractAddition[] additions) => MixedWort.Of(additions).Refusal;
}
