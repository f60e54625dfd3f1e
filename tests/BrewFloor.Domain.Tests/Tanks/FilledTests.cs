using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using CsCheck;
using UnitsNet;
using static BrewFloor.Domain.Tests.Tanks.BeerLogs;
using static BrewFloor.Domain.Tests.Tanks.TankLogs;

namespace BrewFloor.Domain.Tests.Tanks;

public class FilledTests
{
    private static readonly Gen<LogEntry> AnyMove = Gen.OneOf(
        Gen.Double[1, 1300].Select(LogEntry (litres) => Filled(litres)),
        Gen.Double[1, 1300].Select(LogEntry (litres) => Filled(litres, batch: Batch119)),
        Gen.Double[1, 1300].Select(LogEntry (litres) => Racked(litres, P2, K3)),
        Gen.Double[1, 1300].Select(LogEntry (litres) => Racked(litres, K3, P2)),
        Gen.Double[1, 600].Select(LogEntry (litres) => Filled(litres, P2, Batch119)),
        Gen.Double[0, 50].Select(LogEntry (heel) => Emptied(heel: heel)),
        Gen.Double[1, 1300].Select(LogEntry (litres) => Kegged(litres).Rest()),
        Gen.Double[1, 1300].Select(LogEntry (litres) => BatchTakenOver(litres))
    );

    [Fact]
    public void A_filled_tank_holds_the_batch_and_is_in_use()
    {
        var tank = After(Filled(900).On(3)).Of(K3);

        Assert.Equal((Holding.Beer, Batch118.Id, L(900)), (tank.Contents.What, tank.BatchId, tank.Contents.Volume));
        Assert.Equal((Soil.InUse, Day(3)), (tank.Soil, tank.SoilSince.At));
        Assert.Equal([Day(3)], tank.FilledSinceDried);
        Assert.Equal(Day(3), tank.LastFilled?.At);
    }

    [Fact]
    public void A_tank_that_is_not_ready_is_stopped_from_filling() =>
        Assert.Equal(Level.Stop, NewFloor.Says(Filled()).About("not-sanitized")?.Level);

    [Fact]
    public void A_tank_that_holds_beer_hears_of_the_beer_and_not_of_sanitizing()
    {
        var verdict = After(Filled().On(0)).Says(Filled().On(1));

        Assert.Null(verdict.About("not-sanitized"));
        Assert.Contains(verdict.Objections, objection => objection.Level is Level.Impossible);
    }

    [Fact]
    public void Wort_voids_the_sanitizing_the_bath_and_the_plan()
    {
        var sanitized = NewFloor.Standing(
            K3,
            tank =>
                tank with
                {
                    Soil = Soil.Sanitized,
                    Sanitized = new(Day(2), Guid.Empty),
                    StretchesSinceDrained = [new(Closure.Closed, Gas.Air, Day(2))],
                    Bath = new(new(Day(1), Guid.Empty), BathKind.Citric, IsRinsed: true),
                    Washed = new(Day(1), Guid.Empty),
                    Heel = L(3),
                }
        );

        var tank = sanitized.And(FillPlanned(3).On(2), Filled().On(3)).Of(K3);

        Assert.Null(tank.Sanitized);
        Assert.Null(tank.Bath);
        Assert.Null(tank.Washed);
        Assert.Null(tank.Planned);
        Assert.Null(tank.Heel);
        Assert.Empty(tank.StretchesSinceDrained);
    }

    [Fact]
    public void Filling_leaves_gas_and_closure_as_they_were()
    {
        var purged = NewFloor.Standing(K3, t => t with { Gas = Gas.CarbonDioxide, Closure = Closure.Vented });

        var tank = purged.And(Filled().On(0)).Of(K3);

        Assert.Equal((Gas.CarbonDioxide, Closure.Vented), (tank.Gas, tank.Closure));
        Assert.Equal(Pressure.Zero.Kilopascals, tank.PressureNow()?.Kilopascals);
    }

    [Fact]
    public void Wort_run_into_a_shut_tank_leaves_a_pressure_nobody_knows() =>
        Assert.Null(
            NewFloor
                .Standing(K3, t => t with { Closure = Closure.Closed, Pressure = new(KPa(0), new(Day(0), Guid.Empty)) })
                .And(Filled().On(1))
                .Of(K3)
                .PressureNow()
        );

    [Fact]
    public void A_second_batch_in_one_tank_is_impossible()
    {
        var verdict = After(Filled(batch: Batch119).On(0)).Says(Filled().On(1));

        Assert.Equal(Objection.Impossible("tank-occupied", new Number("tank", "K3")), verdict.About("tank-occupied"));
    }

    [Fact]
    public void More_of_the_same_batch_is_to_be_logged_as_topped_up()
    {
        var verdict = After(Filled(400).On(0)).Says(Filled(400).On(0, hour: 14));

        Assert.Equal(Level.Impossible, verdict.LevelOf("topped-up-wanted"));
        Assert.Null(verdict.About("tank-occupied"));
    }

    [Theory]
    [InlineData(1000, null, null)] // the working volume itself is fine
    [InlineData(1000.1, "over-working", Level.Caution)]
    [InlineData(1200, "over-working", Level.Caution)] // to the brim
    [InlineData(1200.1, "over-total", Level.Impossible)]
    public void A_tank_takes_what_fits_into_it(double litres, string? code, Level? level)
    {
        var verdict = NewFloor.Says(Filled(litres).On(0));

        Assert.Equal(level, verdict.LevelOf("over-total") ?? verdict.LevelOf("over-working"));
        Assert.Equal(code, (verdict.About("over-total") ?? verdict.About("over-working"))?.Code);
    }

    [Fact]
    public void What_does_not_fit_comes_with_its_numbers() =>
        Assert.Equal(
            Objection.Impossible("over-total", new("tank", "K3"), new("volume", L(1300)), new("total", L(1200))),
            NewFloor.Says(Filled(1300).On(0)).About("over-total")
        );

    [Theory]
    [InlineData(960, 0.20, false)] // 240 of 1,200 L free: just what it wants
    [InlineData(961, 0.20, true)]
    [InlineData(961, 0.10, false)]
    public void Foam_wants_room(double litres, double wanted, bool isCautioned) =>
        Assert.Equal(
            isCautioned ? Level.Caution : null,
            NewFloor.Where(K3 with { HeadspaceWanted = wanted }).Says(Filled(litres).On(0)).LevelOf("little-headspace")
        );

    [Theory]
    [InlineData(TankType.ConicalFermenter, 0.20)]
    [InlineData(TankType.BrightTank, 0)] // beer no longer foams there
    public void A_tank_of_which_nothing_was_said_wants_what_its_type_wants(TankType type, double wanted)
    {
        Tank tank = new(Guid.Empty, "X1")
        {
            Type = type,
            Material = Material.Stainless,
            HighestCleaning = C(80),
            Strapping = Straight(100),
            Working = L(90),
        };

        Assert.Equal(wanted, tank.HeadspaceWanted);
        Assert.Equal(0.15, (tank with { HeadspaceWanted = 0.15 }).HeadspaceWanted);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-5)]
    public void Nothing_is_no_filling(double litres) =>
        Assert.Equal(Level.Impossible, NewFloor.Says(Filled(litres).On(0)).LevelOf("no-volume"));

    [Fact]
    public void A_level_above_the_brim_is_unreadable()
    {
        var filled = Filled(900) with { Level = Length.FromMillimeters(1201) };

        Assert.Equal(Level.Impossible, NewFloor.Says(filled.On(0)).LevelOf("level-outside-tank"));
    }

    [Fact]
    public void A_batch_that_is_out_of_every_tank_is_not_filled_again() =>
        Assert.Equal(
            Level.Impossible,
            After(Filled(900).On(0), Kegged(900).Rest().On(20)).Says(Filled(900, P2).On(21)).LevelOf("batch-closed")
        );

    [Fact]
    public void A_batch_fills_two_tanks() =>
        Assert.Null(After(Filled(900).On(0)).Says(Filled(450, P2).On(0)).About("batch-closed"));

    [Fact]
    public void The_wort_gives_the_original_gravity_and_the_first_reading()
    {
        var batch = After(FilledAt(1.050).On(0)).Of(Batch118);

        Assert.Equal(Sg20(1.050), batch.OriginalGravity);
        Assert.Equal(Sg20(1.050), Assert.Single(batch.Gravities).Gravity);
        Assert.Equal(Day(0), batch.Filled?.At);
    }

    [Theory]
    [InlineData(600, 1.044)] // a third more of thinner wort
    [InlineData(900, 1.042)] // half and half
    public void Wort_of_another_gravity_in_a_second_tank_moves_the_original_gravity_by_its_volume(
        double litres,
        double expected
    )
    {
        // by hand: (900 x 1.052 + 600 x 1.032) / 1500 and (900 x 1.052 + 900 x 1.032) / 1800
        var batch = After(FilledAt(1.052).On(0), FilledAt(1.032, litres, P2).On(0, hour: 12)).Of(Batch118);

        Assert.Equal(Sg20(expected), batch.OriginalGravity);
    }

    [Fact]
    public void No_log_gets_a_second_batch_into_a_full_tank() =>
        AnyMove
            .List[0, 30]
            .Sample(log =>
            {
                var floor = NewFloor;
                foreach (var entry in log.Select((entry, day) => entry.On(day)))
                {
                    var isLogged = floor.Says(entry).Objections.All(o => o.Level is not Level.Impossible);
                    var after = isLogged ? floor.After(entry) : floor;
                    var isSwapped =
                        floor.Of(K3) is { HoldsBeer: true } had
                        && after.Of(K3) is { HoldsBeer: true } has
                        && had.BatchId != has.BatchId;
                    if (isSwapped)
                    {
                        return false;
                    }

                    floor = after;
                }

                return true;
            });

    /// <summary>The control of the law above: without the objections a log does it.</summary>
    [Fact]
    public void A_log_that_nobody_guards_swaps_the_batch()
    {
        var tank = After(Filled().On(0), Filled(batch: Batch119).On(1)).Of(K3);

        Assert.Equal(Batch119.Id, tank.BatchId);
    }
}
