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

    [Theory]
    [InlineData("7363 kJ = 2.05 kWh", 7363, 2.05)]
    [InlineData("25.1 mg O2 (0.25 mg/L in 100 L)", 25.1, 0.25)]
    [InlineData("2.3e6 cells, -1e-6 P", 2.3e6, -1e-6)]
    [InlineData("6.6 / 8.0 mg/L (model 7)", 6.6, 8)]
    public void Every_number_of_a_row_is_asked_for(string expected, double first, double second)
    {
        var check = new Check("X-3", "", "", expected, "+-1e-9", "");

        check.Agrees(first, second);
        Assert.Equal(2, check.Values);
        Assert.ThrowsAny<Exception>(() => check.Agrees(first));
        Assert.ThrowsAny<Exception>(() => check.Agrees(first, second + 2e-9));
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
