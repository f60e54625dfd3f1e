using System.Text;
using System.Text.Json.Nodes;
using BrewFloor.Domain.Log;
using BrewFloor.Store.Log;
using BrewFloor.Store.Tests.Postgres;

namespace BrewFloor.Store.Tests.Log;

public class CanonicalJsonTests
{
    // Values from RFC 8785, appendix B, but for the first two, which are the plainest cases.
    [Theory]
    [InlineData(20, "20")]
    [InlineData(0.5, "0.5")]
    [InlineData(-0.0, "0")]
    [InlineData(5e-324, "5e-324")]
    [InlineData(-5e-324, "-5e-324")]
    [InlineData(1.7976931348623157e308, "1.7976931348623157e+308")]
    [InlineData(9007199254740992, "9007199254740992")]
    [InlineData(295147905179352830000d, "295147905179352830000")]
    [InlineData(9.999999999999997e22, "9.999999999999997e+22")]
    [InlineData(1e23, "1e+23")]
    [InlineData(1.0000000000000001e23, "1.0000000000000001e+23")]
    [InlineData(999999999999999700000d, "999999999999999700000")]
    [InlineData(999999999999999900000d, "999999999999999900000")]
    [InlineData(1e21, "1e+21")]
    [InlineData(0.000001, "0.000001")]
    [InlineData(9.999999999999997e-7, "9.999999999999997e-7")]
    [InlineData(333333333.3333332, "333333333.3333332")]
    [InlineData(-0.0000033333333333333333, "-0.0000033333333333333333")]
    [InlineData(1424953923781206.2, "1424953923781206.2")]
    public void Numbers_are_written_as_the_standard_says(double number, string written) =>
        Assert.Equal(written, CanonicalJson.Number(number));

    // The example of RFC 8785, 3.2.2 and 3.2.3.
    [Fact]
    public void Members_are_sorted_and_only_what_must_be_is_escaped()
    {
        var json = JsonNode.Parse(
            """{"numbers":[333333333.33333329,1E30,4.50,2e-3,0.000000000000000000000000001],"string":"\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/","literals":[null,true,false]}"""
        );

        Assert.Equal(
            """{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\u000f\nA'B\"\\\\\"/"}""",
            Encoding.UTF8.GetString(CanonicalJson.Utf8(json))
        );
    }

    [Fact]
    public void A_time_left_out_is_not_the_time_it_was_given()
    {
        var note = FreshFloor.Note(FreshFloor.K3, "x");

        Assert.NotEqual(Hash(note), Hash(note with { At = FreshFloor.Ago(0) }));
        Assert.Equal(Hash(note), Hash(note with { }));
    }

    private static byte[] Hash(LogEntry entry) => EntryJson.Hash(entry, FreshFloor.Ann);
}
