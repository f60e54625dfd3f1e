using System.Reflection;

namespace BrewFloor.Brewing.Tests;

public class ChecksTests
{
    [Fact]
    public void Every_check_in_the_file_has_a_test() => Assert.Equal(Check.All.Keys.Order(), Tested.Order());

    [Fact]
    public void A_check_compares_its_numbers_with_its_own_tolerance()
    {
        var check = new Check("X-1", "", "D=0.40 m, SG(20/20)=1.05", "RE 4.305; A -3.97 %", "+-0.005; +-0.01", "");

        check.Agrees(4.31, -3.98);
        Assert.ThrowsAny<Exception>(() => check.Agrees(4.3101, -3.97));
        Assert.ThrowsAny<Exception>(() => check.Agrees(4.305, -3.9801));
        Assert.ThrowsAny<Exception>(() => check.Agrees(4.305));
        Assert.ThrowsAny<Exception>(() => check.Agrees(double.NaN, -3.97));
        Assert.Equal((0.40, 1.05), (check.Given("D"), check.Given("SG(20/20)")));
    }

    [Fact]
    public void A_tolerance_in_percent_is_of_the_expected_value()
    {
        var check = new Check("X-2", "", "mean: OE 11.34, AE 2.01", "4.00 %w/w", "+-2.5 % relative", "");

        check.Agrees(4.1);
        Assert.ThrowsAny<Exception>(() => check.Agrees(4.11));
        Assert.Equal((11.34, 2.01), (check.Given("OE"), check.Given("AE")));
    }

    private static IEnumerable<string> Tested =>
        typeof(ChecksTests)
            .Assembly.GetTypes()
            .SelectMany(t => t.GetMethods())
            .SelectMany(m => m.GetCustomAttributes<CheckAttribute>())
            .SelectMany(c => c.Ids)
            .Distinct();
}
