using BrewFloor.Brewing.Volumes;
using CsCheck;
using UnitsNet;
using static BrewFloor.Brewing.Tests.Extract.Words;

namespace BrewFloor.Brewing.Tests.Volumes;

public class ContractionTests
{
    [Theory] // Kell 1975
    [Check("VO-03")]
    public void A_crash_is_no_loss(Check check)
    {
        var cold = Contraction.From20(Volume.FromLiters(100), Celsius(1)).Value;

        check.Agrees(100 - cold.Liters);
    }

    [Fact]
    public void There_and_back_is_the_same_volume() =>
        Gen.Select(Gen.Double[0, 10_000], Gen.Double[0, 100])
            .Sample(
                (litres, celsius) =>
                    Assert.Equal(
                        litres,
                        Contraction
                            .To20(
                                Contraction.From20(Volume.FromLiters(litres), Celsius(celsius)).Value,
                                Celsius(celsius)
                            )
                            .Value.Liters,
                        1e-9 * (1 + litres)
                    )
            );

    [Fact]
    public void Ice_and_steam_are_refused()
    {
        Assert.Equal(
            OutOfRange("temperature", "0", "100", "°C"),
            Contraction.To20(Volume.FromLiters(1), Celsius(-1)).Refusal
        );
        Assert.Equal("temperature", Contraction.From20(Volume.FromLiters(1), Celsius(101)).Refusal?.What);
        Assert.Equal("volume", Contraction.From20(Volume.FromLiters(-1), Celsius(1)).Refusal?.What);
    }
}
