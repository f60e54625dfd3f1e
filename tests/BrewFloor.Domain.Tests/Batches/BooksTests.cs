using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Log;
using CsCheck;
using static BrewFloor.Domain.Tests.Tanks.BeerLogs;
using static BrewFloor.Domain.Tests.Tanks.TankLogs;

namespace BrewFloor.Domain.Tests.Batches;

public class BooksTests
{
    private static readonly Gen<double> Litres = Gen.Double[0, 1500];

    private static readonly Gen<LogEntry> AnyMove = Gen.Select(
        Gen.Int[0, 12],
        Litres,
        Gen.Double[0, 40],
        Gen.Bool,
        Gen.OneOf(Gen.Const(K3), Gen.Const(B1), Gen.Const(P2)),
        (kind, litres, heel, rest, tank) =>
            (LogEntry)(
                kind switch
                {
                    0 => Filled(litres, tank),
                    1 => BatchTakenOver(rest ? litres : null, tank),
                    2 => ToppedUp(litres, tank),
                    3 => Racked(litres, K3, B1, heel) with { IsRest = rest },
                    4 => Racked(litres, B1, P2, heel) with { IsRest = rest },
                    5 => LevelMeasured(litres, tank),
                    6 => rest ? Kegged(litres, tank).Rest(heel) : Kegged(litres, tank),
                    7 => Discarded(litres, tank, rest),
                    8 => Dumped(Sediment.Yeast, heel, tank),
                    9 => Emptied(tank, heel),
                    11 => Harvested(heel, tank),
                    10 => Racked(litres, P2, K3, heel) with { IsRest = rest },
                    _ => DryHopped(tank: tank),
                }
            )
    );

    [Fact]
    public void Whatever_is_logged_every_litre_that_came_in_is_somewhere() =>
        AnyMove
            .List[0, 30]
            .Sample(log =>
            {
                var batch = After([.. log.Select((entry, day) => entry.On(day))]).Of(Batch118);
                return Math.Abs(Missing(batch)) < 1e-6;
            });

    /// <summary>The control of the law above: it sees a litre that was booked out twice.</summary>
    [Fact]
    public void A_litre_booked_twice_is_seen()
    {
        var batch = After(Filled(900).On(0), Kegged(300).On(20)).Of(Batch118);

        var wrong = batch with { Litres = batch.Litres with { Packaged = L(301) } };

        Assert.Equal(0, Missing(batch), 9);
        Assert.Equal(-1, Missing(wrong), 9);
    }

    [Fact]
    public void Tank_and_batch_agree_on_the_litres_in_every_tank() =>
        AnyMove
            .List[0, 30]
            .Sample(log =>
            {
                var floor = Possible([.. log.Select((entry, day) => entry.On(day))]);
                return floor.Tanks.All(t => Booked(floor.Of(Batch118), t.State.Id) == t.State.Contents.Volume?.Liters);
            });

    private static double? Booked(BatchState batch, Guid tank) =>
        batch.InTanks.Where(beer => beer.TankId == tank).Select(beer => beer.Volume?.Liters).SingleOrDefault();

    /// <summary>The floor after those entries of a log that aren't impossible.</summary>
    private static Floor Possible(LogEntry[] log) =>
        log.Aggregate(
            NewFloor,
            (floor, entry) =>
                floor.Says(entry).Objections.Any(o => o.Level is Level.Impossible) ? floor : floor.After(entry)
        );

    private static double Missing(BatchState batch)
    {
        var litres = batch.Litres;
        return litres.FilledIn.Liters
            - batch.InTanks.Sum(beer => beer.Volume?.Liters ?? 0)
            - litres.Packaged.Liters
            - litres.Discarded.Liters
            - litres.Dumped.Liters
            - litres.Harvested.Liters
            - litres.Left.Liters
            - litres.MeasuringDifference.Liters;
    }
}
