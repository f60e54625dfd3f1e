using System.Globalization;
using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Web.Log;
using Microsoft.Extensions.Primitives;
using UnitsNet;

namespace BrewFloor.Web.Tests.Log;

public class FormReaderTests
{
    [Theory]
    [InlineData("20", "hL", 2000)]
    [InlineData("20,5", "L", 20.5)]
    [InlineData("20.5", "L", 20.5)]
    [InlineData("1", "bbl", 117.347765)] // 31 US gallons of 3.785411784 L: the beer barrel, not the oil barrel of 42
    public void Litres_are_read_with_either_decimal_mark_and_in_any_unit(string figure, string unit, double litres) =>
        Assert.Equal(litres, Said(("volume", figure), ("volume.unit", unit)).Litres("volume").Liters, tolerance: 1e-6);

    [Theory]
    [InlineData("", "L", "missing")]
    [InlineData("NaN", "L", "not-a-number")]
    [InlineData("1e9", "L", "not-a-number")]
    [InlineData("1.000,5", "L", "two-separators")]
    [InlineData("1 000", "L", "grouped-number")]
    [InlineData("-5", "L", "out-of-range")]
    [InlineData("20", "firkin", "unknown-unit")]
    public void What_cannot_be_read_is_a_problem_of_its_field_and_nothing_throws(
        string figure,
        string unit,
        string code
    )
    {
        var said = Said(("volume", figure), ("volume.unit", unit));

        said.Litres("volume");

        Assert.Equal(code, said.Problems["volume"].Code);
    }

    [Fact]
    public void What_was_typed_is_kept_unit_and_all_beside_the_stored_field()
    {
        var said = Said(("volume", "20"), ("volume.unit", "hL"));

        said.Litres("volume");

        Assert.Equal([new TypedText("volume_l", "20 hL")], said.Typed);
    }

    [Fact]
    public void A_time_left_as_it_was_shown_is_now_by_the_databases_clock() =>
        Assert.Null(Said(("when", "2026-03-14T14:02"), ("when.shown", "2026-03-14T14:02")).MomentOrNone("when"));

    [Fact]
    public void A_choice_that_was_not_offered_is_asked_again()
    {
        var said = Said(("closure", "Ajar"));

        said.Choice<Closure>("closure");

        Assert.Equal("missing", said.Problems["closure"].Code);
    }

    [Fact]
    public void A_gravity_in_plato_keeps_its_scale()
    {
        var read = Said(("gravity", "12,5"), ("gravity.unit", "°P"))
            .GravityOrNone("gravity", Instrument.Hydrometer, Temperature.FromDegreesCelsius(20));

        Assert.Equal(
            new GravityRead(12.5, GravityScale.Plato, Instrument.Hydrometer, Temperature.FromDegreesCelsius(20)),
            read
        );
    }

    private static FormReader Said(params (string Name, string Value)[] fields) =>
        new(
            fields.ToDictionary(f => f.Name, f => new StringValues(f.Value), StringComparer.Ordinal),
            new SiteTimes(TimeZoneInfo.Utc, new(2026, 3, 14, 14, 0, 0, TimeSpan.Zero), CultureInfo.InvariantCulture)
        );
}
