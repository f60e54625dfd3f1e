using BrewFloor.Domain.Yeast;
using static BrewFloor.Domain.Tests.Yeast.YeastLogs;

namespace BrewFloor.Domain.Tests.Yeast;

/// <summary>Received, taken over, poured away.</summary>
public class NewYeastTests
{
    [Fact]
    public void Yeast_from_the_supplier_is_generation_0()
    {
        var jar = TheFloor().After(On(0, Received(Pack, Grams(11.5)))).Of(Pack);

        Assert.Equal(
            (0, false, Grams(11.5), Day(0)),
            (jar.Generation, jar.IsGenerationAtLeast, jar.Amount, jar.Made!.Value.At)
        );
    }

    [Fact]
    public void Yeast_that_was_in_the_fridge_is_of_that_generation_at_least()
    {
        var jar = TheFloor().After(On(0, Fridge(Slurry, 4))).Of(Slurry);

        Assert.Equal((4, true, Celsius(3)), (jar.Generation, jar.IsGenerationAtLeast, jar.StoredAt));
        Assert.Empty(jar.Parents);
    }

    [Fact]
    public void One_jar_comes_once()
    {
        var floor = TheFloor().After(On(0, Fridge(Slurry, 4)));

        Assert.Equal(["culture-already-here"], On(1, Fridge(Slurry, 4)).JudgedOn(floor).Codes());
        Assert.Equal(["culture-already-here"], On(1, Received(Slurry, Ml(100))).JudgedOn(floor).Codes());
    }

    [Fact]
    public void A_culture_of_which_there_is_nothing_is_none() =>
        Assert.Equal(["no-yeast"], On(0, Received(Pack, default)).JudgedOn(TheFloor()).Codes());

    [Fact]
    public void What_is_poured_away_is_poured_away_once()
    {
        var away = new CultureDiscarded(Slurry.Id, "smelt of rubber");
        var floor = TheFloor().After(On(0, Fridge(Slurry, 4)), On(1, away));

        Assert.False(floor.Of(Slurry).IsUsable);
        Assert.Equal(["culture-discarded"], On(2, away).JudgedOn(floor).Codes());
    }
}
