using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using static BrewFloor.Domain.Tests.Cleaning.CleaningLogs;

namespace BrewFloor.Domain.Tests.Cleaning;

public class SoilTests
{
    public static readonly TheoryData<Soil, LogEntry[]> Steps = new()
    {
        { Soil.Rinsed, [Rinsed(1)] },
        { Soil.Soiled, [Washed(1)] }, // with cleaner on its walls
        { Soil.Soiled, [Rinsed(1), Washed(2)] },
        { Soil.Rinsed, [Washed(1), Rinsed(2)] },
        { Soil.Clean, [Washed(1), Rinsed(2), Inspected(3)] },
        { Soil.Soiled, [Washed(1), Inspected(2)] }, // the cleaner is still on it
        { Soil.Rinsed, [Rinsed(1), Inspected(2)] }, // a look makes nothing clean
        { Soil.Soiled, [Washed(1), Rinsed(2), Inspected(3, passed: false)] },
        { Soil.Rinsed, [Washed(1), Rinsed(2), Inspected(3, passed: false), Rinsed(4), Inspected(5)] }, // to be washed again
        { Soil.Clean, [.. Cleaned, Rinsed(5)] },
        { Soil.Clean, [.. Cleaned, Sanitized(5)] }, // contact begins
        { Soil.Sanitized, [.. Cleaned, Sanitized(5), Drained(6)] },
        { Soil.Clean, [.. Cleaned, Sanitized(5), Drained(6), Rinsed(7)] }, // tap water voids it
        { Soil.Soiled, [.. Cleaned, Sanitized(5), Drained(6), Washed(7)] },
        { Soil.Soiled, [.. Cleaned, Sanitized(5), Drained(6), Inspected(7, passed: false)] },
        { Soil.Soiled, [Sanitized(5), Drained(6)] }, // dirt can't be sanitized
        { Soil.Clean, [.. Cleaned, Passivated(5), AirDried(6)] },
        { Soil.Clean, [Passivated(5), AirDried(6)] }, // the bath leaves it clean
        { Soil.Soiled, [AirDried(6)] }, // dry dirt
    };

    [Theory]
    [MemberData(nameof(Steps))]
    public void A_soiled_tank_becomes(Soil soil, LogEntry[] steps) => Assert.Equal(soil, Soiled(0).Then(steps).Soil);

    [Fact]
    public void A_brewer_who_allowed_it_beforehand_vouches_for_walls_that_were_only_rinsed()
    {
        var allowed = Soiled(0).Then(Rinsed(1)) with
        {
            Allowances = [new(Guid.CreateVersion7(), "sanitized", ["not-clean"], At(9))],
        };

        Assert.Equal(Soil.Sanitized, allowed.Then(Sanitized(5), Drained(6)).Soil);
    }

    [Fact]
    public void Cleaning_that_beer_got_in_the_way_of_leaves_the_beer_where_it_is()
    {
        var tank = Soiled(0).WithBeer();
        LogEntry[] all = [Rinsed(1), Washed(2), Sanitized(3), Drained(4), Passivated(5), AirDried(6), Inspected(7)];

        Assert.All(
            all,
            entry => Assert.Equal((tank.Contents, Soil.InUse), (tank.Then(entry).Contents, tank.Then(entry).Soil))
        );
    }

    [Fact]
    public void The_soil_a_rinse_leaves_behind_is_as_old_as_it_was()
    {
        var emptied = Soiled(0);

        Assert.Equal(emptied.SoilSince, emptied.Then(Rinsed(1), Rinsed(2)).SoiledBeforeRinse);
        Assert.Null(emptied.Then(Rinsed(1), Washed(2), Rinsed(3)).SoiledBeforeRinse);
    }

    [Fact]
    public void Cleaner_stays_on_the_walls_until_water_takes_it_off()
    {
        Assert.Equal(Agent.Caustic, Soiled(0).Then(Washed(1, Agent.Caustic)).ChemicalOnWalls);
        Assert.Null(Soiled(0).Then(Washed(1, Agent.Caustic), Rinsed(2)).ChemicalOnWalls);
        Assert.Equal(Agent.Peracetic, Soiled(0).Then(Sanitized(1), Drained(2)).ChemicalOnWalls);
    }

    [Fact]
    public void A_liquid_stands_in_the_tank_until_it_is_drained_or_rinsed_out()
    {
        Assert.Equal(Holding.Cleaner, Soiled(0).Then(Washed(1)).Contents.What);
        Assert.Equal(Holding.Nothing, Soiled(0).Then(Washed(1), Drained(2)).Contents.What);
        Assert.Equal(Holding.Nothing, Soiled(0).Then(Washed(1), Rinsed(2)).Contents.What);
        Assert.Equal(Holding.Sanitizer, Soiled(0).Then(Sanitized(1)).Contents.What);
        Assert.Equal(Holding.Bath, Soiled(0).Then(Passivated(1)).Contents.What);
        Assert.Equal(Holding.Nothing, Soiled(0).Then(Passivated(1), AirDried(2)).Contents.What);
    }
}
