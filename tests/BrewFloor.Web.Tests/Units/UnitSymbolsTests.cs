using BrewFloor.Web.Units;
using UnitsNet;

namespace BrewFloor.Web.Tests.Units;

public class UnitSymbolsTests
{
    [Theory] // NIST Handbook 44 (US gallon 3.785411784 L; beer barrel 31 gallons), definitions of psi and inch
    [InlineData("gal", 3.785411784)]
    [InlineData("bbl", 117.347765304)]
    [InlineData("hL", 100)]
    [InlineData("mL", 0.001)]
    public void A_volume_symbol_means_what_the_trade_means(string symbol, double litres) =>
        Assert.Equal(litres, Volume.From(1, UnitSymbols.Volumes[symbol]).Liters, tolerance: 1e-6 * litres); // nine digits are kept there

    [Theory]
    [InlineData("psi", 6.894757)]
    [InlineData("bar", 100)]
    [InlineData("kPa", 1)]
    public void A_pressure_symbol_means_what_the_trade_means(string symbol, double kilopascals) =>
        Assert.Equal(kilopascals, Pressure.From(1, UnitSymbols.Pressures[symbol]).Kilopascals, tolerance: 1e-5);

    [Fact]
    public void UnitsNets_own_barrel_is_another_one() =>
        Assert.NotEqual(
            Volume.Parse("1 bbl", System.Globalization.CultureInfo.InvariantCulture).Liters,
            Volume.From(1, UnitSymbols.Volumes["bbl"]).Liters,
            tolerance: 1
        );

    [Fact]
    public void A_readers_units_are_kept_as_text_and_read_back()
    {
        Assert.Equal(ReadingUnits.UsCustomary, ReadingUnits.Parse(ReadingUnits.UsCustomary.ToString()));
        Assert.Equal(ReadingUnits.Metric, ReadingUnits.Parse("furlongs"));
    }
}
