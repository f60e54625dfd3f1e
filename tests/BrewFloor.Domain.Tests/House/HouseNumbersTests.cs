using System.Reflection;
using BrewFloor.Domain.House;

namespace BrewFloor.Domain.Tests.House;

public class HouseNumbersTests
{
    private static readonly HouseRules Beginning = HouseRules.Defaults(TimeZoneInfo.Utc);

    public static TheoryData<string> Keys => [.. HouseNumbers.All.Select(number => number.Key)];

    [Theory]
    [MemberData(nameof(Keys))]
    public void What_is_shown_can_be_typed_and_only_that_number_changes(string key)
    {
        var number = HouseNumbers.Of(key);
        Assert.InRange(number.Of(Beginning), number.Least, number.Most);
        Assert.Equal(
            Beginning,
            HouseNumbers
                .Read(Beginning, k => k.Equals(key, StringComparison.Ordinal) ? number.Text(Beginning) : null)
                .Rules
        );
        var other = number.With(Beginning, number.Of(Beginning) > number.Least ? number.Least : number.Most);

        var changed = Assert.Single(HouseNumbers.Between(Beginning, other));

        Assert.Equal(key, changed.Key);
        Assert.NotEqual(Beginning, other);
    }

    [Fact]
    public void Every_number_of_the_rules_is_on_the_page()
    {
        Type[] numbers =
        [
            typeof(int),
            typeof(double),
            typeof(TimeSpan),
            typeof(UnitsNet.Temperature),
            typeof(UnitsNet.Volume),
        ];
        var properties = typeof(HouseRules)
            .GetProperties(BindingFlags.Public | BindingFlags.Instance)
            .Count(property =>
                numbers.Contains(property.PropertyType) && property.Name is not nameof(HouseRules.Version)
            );

        Assert.Equal(
            properties,
            HouseNumbers.All.Select(number => number.Key).Distinct(StringComparer.Ordinal).Count()
        );
    }

    [Theory]
    [InlineData("sanitized-open", "0", "house-range")]
    [InlineData("sanitized-sealed", "10000", "house-range")]
    [InlineData("pressure-caution", "120", "house-range")]
    [InlineData("passivation", "-6", "house-range")]
    [InlineData("generations", "7.5", "not-whole")]
    [InlineData("slurry", "soon", "not-a-number")]
    [InlineData("slurry", "", "number-missing")]
    [InlineData("heel", "NaN", "not-a-number")]
    public void An_absurd_number_is_refused(string key, string typed, string refused)
    {
        var read = HouseNumbers.Read(Beginning, k => k.Equals(key, StringComparison.Ordinal) ? typed : null);

        Assert.Equal((key, refused), (read.Problems.Single().Key, read.Problems.Single().Value.Code));
        Assert.Equal(Beginning, read.Rules);
    }

    [Fact]
    public void A_limit_for_open_tanks_above_that_for_closed_ones_is_refused_with_both()
    {
        var read = HouseNumbers.Read(Beginning, key => key is "sanitized-open" ? "30" : null);

        var (key, refusal) = read.Problems.Single();
        Assert.Equal(
            ("sanitized-closed", "house-order", "sanitized-open", "30"),
            (key, refusal.Code, refusal.What, refusal.From)
        );
    }

    [Fact]
    public void A_comma_is_as_good_as_a_point() =>
        Assert.Equal(
            TimeSpan.FromMinutes(90),
            HouseNumbers.Read(Beginning, key => key is "sanitized-open" ? "1,5" : null).Rules.SanitizedOpen
        );
}
