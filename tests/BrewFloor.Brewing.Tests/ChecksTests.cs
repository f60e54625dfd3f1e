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

    private static IEnumerable<string> Tested =>
        typeof(ChecksTests)
            .Assembly.GetTypes()
            .SelectMany(t => t.GetMethods())
            .SelectMany(m => m.GetCustomAttributes<CheckAttribute>())
            .SelectMany(c => c.Ids)
            .Distinct();
}
