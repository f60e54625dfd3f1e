using System.Text.Json.Nodes;
using BrewFloor.Web.Api;

namespace BrewFloor.Web.Tests.Api;

public class ApiQuantitiesTests
{
    [Fact]
    public void A_quantity_becomes_a_number_in_the_stored_unit_and_what_was_sent_is_kept()
    {
        var typed = new JsonObject();

        var stored = ApiQuantities.ToStored(
            JsonNode
                .Parse("""{"volume": {"value": 20, "unit": "hL"}, "temperature": {"value": 68, "unit": "°F"}}""")!
                .AsObject(),
            typed
        );

        Assert.Equal(2000, stored["volume_l"]!.GetValue<double>(), tolerance: 1e-9);
        Assert.Equal(20, stored["temperature_c"]!.GetValue<double>(), tolerance: 1e-9);
        Assert.Equal("20 hL", typed["volume_l"]!.GetValue<string>());
    }

    [Theory]
    [InlineData("""{"volume": {"value": 20, "unit": "firkin"}}""")]
    [InlineData("""{"volume": {"value": "twenty", "unit": "L"}}""")]
    public void What_cannot_be_read_names_its_field(string sent)
    {
        var refused = Assert.Throws<UnreadableException>(() =>
            ApiQuantities.ToStored(JsonNode.Parse(sent)!.AsObject(), [])
        );

        Assert.Equal("volume", refused.Field);
    }

    [Fact]
    public void A_stored_payload_is_shown_with_units_all_the_way_down()
    {
        var shown = ApiQuantities.ToShown(
            JsonNode.Parse("""{"volume_l": 20, "cuts": [{"volume_l": 1.5}], "why": "x"}""")
        )!;

        Assert.Equal("L", shown["volume"]!["unit"]!.GetValue<string>());
        Assert.Equal(1.5, shown["cuts"]![0]!["volume"]!["value"]!.GetValue<double>());
        Assert.Equal("x", shown["why"]!.GetValue<string>());
    }
}
