using System.Globalization;
using BrewFloor.Web.Log;
using BrewFloor.Web.Tanks;
using Microsoft.Extensions.Primitives;

namespace BrewFloor.Web.Tests.Tanks;

public class TankDipsTests
{
    [Theory] // Kell 1975: 0.998204 kg/L at 20 °C, 0.999972 at 4
    [InlineData("", 100)]
    [InlineData("20", 100)]
    [InlineData("4", 99.823)]
    public void Water_that_was_weighed_in_is_litres_at_its_temperature(string celsius, double litres)
    {
        var said = Said(
            ("dips.0.level", "0"),
            ("dips.0.volume", "0"),
            ("dips.1.level", "500"),
            ("dips.1.volume", "99.8204"),
            ("dips.1.volume.unit", "kg"),
            ("water-temperature", celsius),
            ("water-temperature.unit", "°C")
        );

        var dips = TankDips.Read(said).ToArray();

        Assert.Empty(said.Problems);
        Assert.Equal((500, litres), (dips[1].Level.Millimeters, Math.Round(dips[1].Volume.Liters, 3)));
    }

    [Theory]
    [InlineData("dips.2.level", "dips.2.volume")]
    [InlineData("dips.2.volume", "dips.2.level")]
    public void Half_a_row_is_asked_again_under_what_it_lacks(string typed, string lacks)
    {
        var said = Said((typed, "12"));

        _ = TankDips.Read(said).ToArray();

        Assert.Equal("missing", said.Problems[lacks].Code);
    }

    [Fact]
    public void Water_hotter_than_the_formula_is_made_for_is_said()
    {
        var said = Said(
            ("dips.1.level", "500"),
            ("dips.1.volume", "99"),
            ("dips.1.volume.unit", "kg"),
            ("water-temperature", "70"),
            ("water-temperature.unit", "°C")
        );

        _ = TankDips.Read(said).ToArray();

        Assert.Equal("out-of-range", said.Problems["water-temperature"].Code);
    }

    // Units as the page sends them, unless said otherwise.
    private static FormReader Said(params (string Name, string Value)[] posted)
    {
        var fields = Enumerable
            .Range(0, 3)
            .SelectMany(row => new[] { ($"dips.{row}.level.unit", "mm"), ($"dips.{row}.volume.unit", "L") })
            .ToDictionary(field => field.Item1, field => new StringValues(field.Item2), StringComparer.Ordinal);
        foreach (var (name, value) in posted)
        {
            fields[name] = value;
        }

        return new(fields, new SiteTimes(TimeZoneInfo.Utc, DateTimeOffset.UnixEpoch, CultureInfo.InvariantCulture));
    }
}
