using System.Globalization;
using CsCheck;

namespace BrewFloor.Brewing.Tests;

public class TypedNumberTests
{
    [Theory]
    [InlineData("1.048", 1.048)]
    [InlineData("1,048", 1.048)]
    [InlineData("20", 20)]
    [InlineData("  12,5 ", 12.5)]
    [InlineData("\u00a012.5\u202f", 12.5)] // no-break spaces, as pasted from a page
    [InlineData("+3", 3)]
    [InlineData("-1.5", -1.5)]
    [InlineData("\u22121,5", -1.5)] // the typographic minus
    [InlineData(".5", 0.5)]
    [InlineData("5,", 5)]
    [InlineData("007", 7)]
    public void One_comma_or_one_point_is_the_decimal_mark(string text, double value) =>
        Assert.Equal(value, TypedNumber.Parse(text).Value);

    [Theory]
    [InlineData("de-DE")]
    [InlineData("en-US")]
    [InlineData("fr-CH")]
    public void The_culture_of_the_server_changes_nothing(string culture)
    {
        var before = CultureInfo.CurrentCulture;
        CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
        try
        {
            Assert.Equal(1.048, TypedNumber.Parse("1,048").Value);
            Assert.Equal(1.048, TypedNumber.Parse("1.048").Value);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Theory]
    [InlineData(null, "number-missing")]
    [InlineData("", "number-missing")]
    [InlineData(" \u00a0", "number-missing")]
    [InlineData("1.234,5", "two-separators")]
    [InlineData("1,234.5", "two-separators")]
    [InlineData("1.234.567", "grouped-number")]
    [InlineData("1,234,567", "grouped-number")]
    [InlineData("1 000", "grouped-number")]
    [InlineData("1\u202f000,5", "grouped-number")]
    [InlineData("1'000", "grouped-number")]
    [InlineData("NaN", "not-a-number")]
    [InlineData("Infinity", "not-a-number")]
    [InlineData("∞", "not-a-number")]
    [InlineData("1e3", "not-a-number")]
    [InlineData("12 °P", "not-a-number")]
    [InlineData("-", "not-a-number")]
    [InlineData("--1", "not-a-number")]
    [InlineData("1-", "not-a-number")]
    [InlineData(",", "not-a-number")]
    [InlineData("0x10", "not-a-number")]
    [InlineData("1_000", "not-a-number")]
    [InlineData("1234567890123456789012345678901", "not-a-number")] // 31 digits: a stuck key
    public void What_is_not_one_number_is_asked_again(string? text, string code) =>
        Assert.Equal(code, TypedNumber.Parse(text).Refusal?.Code);

    [Fact]
    public void Minus_nothing_is_nothing() => Assert.False(double.IsNegative(TypedNumber.Parse("-0").Value));

    [Fact]
    public void A_number_written_with_either_mark_is_read_back() =>
        Gen.Select(Gen.Double[-99_999, 99_999], Gen.Int[0, 6], Gen.Bool)
            .Sample(
                (value, decimals, comma) =>
                {
                    var text = value.ToString("F" + decimals, CultureInfo.InvariantCulture);
                    Assert.Equal(
                        double.Parse(text, CultureInfo.InvariantCulture),
                        TypedNumber.Parse(comma ? text.Replace('.', ',') : text).Value
                    );
                }
            );

    [Fact]
    public void No_text_makes_it_fall_over() =>
        Gen.String.Sample(text =>
        {
            var read = TypedNumber.Parse(text);
            Assert.True(read.IsDone ? double.IsFinite(read.Value) : read.Refusal.Code.Length > 0);
        });
}
