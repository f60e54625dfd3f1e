using BrewFloor.Brewing.Tanks;
using CsCheck;
using UnitsNet;

namespace BrewFloor.Brewing.Tests.Tanks;

public class ClampFitTests
{
    private static readonly Gen<Clamp> Sizes = Gen.Enum<Clamp>();

    private static Mouth Of(Clamp clamp) => Ferrule.Of(clamp).Mouth;

    private static Reducer Reducer(Clamp port, Clamp part) => new(Of(port), Of(part));

    private static double Mm(Length? length) => length?.Millimeters ?? double.NaN;

    [Theory] // from memory
    [Check("GE-24")]
    public void Flanges_by_the_inch(Check check) => check.Agrees([.. Ferrule.Inch.Select(f => f.Flange.Millimeters)]);

    [Theory] // from memory
    [Check("GE-25")]
    public void Bores_by_the_inch(Check check) => check.Agrees([.. Ferrule.Inch.Select(f => f.Bore.Millimeters)]);

    [Fact]
    public void Every_size_is_found_under_its_own_name() =>
        Assert.Equal(
            [
                .. Enum.GetValues<Clamp>()
                    .Where(clamp => clamp >= Clamp.Dn10)
                    .Select(clamp => clamp.ToString().Replace("Dn", "DN ", StringComparison.Ordinal)),
            ],
            Ferrule.All.Skip((int)Clamp.Dn10).Select(ferrule => ferrule.Name)
        );

    [Fact]
    public void An_inch_and_an_inch_and_a_half_share_the_clamp_and_not_the_bore()
    {
        var fit = ClampFit.Of(Of(Clamp.OneInch), Of(Clamp.OneAndAHalfInch));

        Assert.True(fit.Holds);
        Assert.Equal(12.7, Mm(fit.Step?.Step), 1e-9);
    }

    [Fact]
    public void Dn_40_and_an_inch_and_a_half_clamp_together_with_a_step()
    {
        var fit = ClampFit.Of(Of(Clamp.Dn40), Of(Clamp.OneAndAHalfInch));

        Assert.True(fit.Holds);
        Assert.Equal(38 - 34.8, Mm(fit.Step?.Step), 1e-9);
    }

    [Fact]
    public void Three_inch_takes_an_inch_and_a_half_through_a_reducer_only()
    {
        var (port, part) = (Of(Clamp.ThreeInch), Of(Clamp.OneAndAHalfInch));

        Assert.Equal((91, 50.5), Flanges(ClampFit.Of(port, part).Apart));
        Assert.True(ClampFit.Of(port, part, Reducer(Clamp.ThreeInch, Clamp.OneAndAHalfInch)).Holds);
    }

    [Fact]
    public void A_reducer_the_wrong_way_round_holds_at_neither_end()
    {
        var fit = ClampFit.Of(
            Of(Clamp.ThreeInch),
            Of(Clamp.OneAndAHalfInch),
            Reducer(Clamp.OneAndAHalfInch, Clamp.ThreeInch)
        );

        Assert.All(fit.Joints, joint => Assert.False(joint.Holds));
    }

    [Fact]
    public void The_same_size_is_flush_with_itself() =>
        Sizes.Sample(size =>
        {
            var fit = ClampFit.Of(Of(size), Of(size));
            Assert.True(fit.Holds);
            Assert.Null(fit.Step);
        });

    [Fact]
    public void It_makes_no_difference_which_side_is_named_first() =>
        Gen.Select(Sizes, Sizes)
            .Sample(
                (one, other) =>
                {
                    var (there, back) = (ClampFit.Of(Of(one), Of(other)), ClampFit.Of(Of(other), Of(one)));
                    Assert.Equal(there.Holds, back.Holds);
                    Assert.Equal(there.Step?.Step, back.Step?.Step);
                }
            );

    [Fact] // and turned over it joins them the other way round
    public void The_right_reducer_joins_any_two_sizes_without_a_step() =>
        Gen.Select(Sizes, Sizes)
            .Sample(
                (port, part) =>
                {
                    Assert.Null(ClampFit.Of(Of(port), Of(part), Reducer(port, part)).Step);
                    Assert.True(ClampFit.Of(Of(port), Of(part), Reducer(port, part)).Holds);
                    Assert.True(ClampFit.Of(Of(part), Of(port), Reducer(part, port)).Holds);
                }
            );

    [Fact]
    public void Through_a_reducer_it_holds_exactly_when_both_its_ends_do() =>
        Gen.Select(Sizes, Sizes, Sizes, Sizes)
            .Sample(
                (port, near, far, part) =>
                    Assert.Equal(
                        ClampFit.Of(Of(port), Of(near)).Holds && ClampFit.Of(Of(far), Of(part)).Holds,
                        ClampFit.Of(Of(port), Of(part), Reducer(near, far)).Holds
                    )
            );

    [Fact]
    public void Two_sizes_clamp_together_exactly_when_their_flanges_are_the_same() =>
        Gen.Select(Sizes, Sizes)
            .Sample(
                (one, other) =>
                    Assert.Equal(
                        Of(one).Flange.Millimeters.Equals(Of(other).Flange.Millimeters),
                        Ferrule.Of(one).ClampsTo(Ferrule.Of(other))
                    )
            );

    private static (double, double) Flanges(Joint? joint) => (Mm(joint?.One.Flange), Mm(joint?.Other.Flange));
}
