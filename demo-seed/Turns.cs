using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using UnitsNet;

namespace BrewFloor.DemoSeed;

/// <summary>One turn of a tank: brewed, fermented, cooled, racked or bottled, washed.</summary>
internal sealed class Turns(Story story, Care care, Jars jars)
{
    private const string Lapsed = "sanitizing-lapsed";
    private const double HeelShare = 0.008;

    private readonly Dictionary<int, Jar> _jarOf = [];
    private readonly Dictionary<(string, int), BatchAccount> _batchOf = [];
    private readonly Fermentation _fermentation = new(story);
    private readonly BrightTurns _bright = new(story, care);

    /// <summary>The jar that was harvested from the brew of a day.</summary>
    public Jar JarOf(int day) => _jarOf[day];

    public BatchAccount BatchOf(Tank tank, int day) => _batchOf[(tank.Code, day)];

    public void Run(Brew brew)
    {
        BatchAccount batch = new(brew, story.Dice.Id($"batch {brew.Tank.Code} {brew.Day}"));
        _batchOf[(brew.Tank.Code, brew.Day)] = batch;
        BrewDay(batch);
        _fermentation.Readings(batch);
        if (!brew.TrubWaits)
        {
            DumpTrub(batch);
        }

        if (brew.Discarded is { } discarded)
        {
            PourAway(batch, discarded.On, discarded.Why);
            return;
        }

        TakeYeast(batch);
        _fermentation.Cool(batch);
        if (brew.Beer.IsDryHopped)
        {
            DryHop(batch);
        }

        if (brew.Tank.IsStainless)
        {
            RackAndPackage(batch);
        }
        else
        {
            Bottle(batch);
        }
    }

    private void BrewDay(BatchAccount batch)
    {
        var (brew, tank, beer) = (batch.Brew, batch.Tank, batch.Beer);
        var brewer = story.Crew.Brews(brew.Day);
        if (brew.IsPlanned)
        {
            Plan(batch, brewer);
        }

        care.Prepare(tank, brew.Day, brew.Hours.Sanitized);
        if (brew.AllowedBecause is { } because)
        {
            var asked = story.At(tank, brew.Day, brew.Hours.Filled, 10, brewer);
            asked.Do(new Allowed(tank.Id, "filled", [Lapsed], asked.Now.AddHours(2), because));
        }

        var visit = story.At(tank, brew.Day, brew.Hours.Filled, 30, brewer);
        Answer? answer = brew.DoneAnywayBecause is { } told ? new(told, [Lapsed], AlreadyHappened: true) : null;
        batch.Filled = visit.Do(Wort(batch, brewer), 25, answer).Last!;
        visit.Do(new TemperatureSet(tank.Id, Celsius(beer.Degrees)) { BatchId = batch.Id }, 5);
        if (brew.ToppedUpBy > 0)
        {
            visit.Do(
                new ToppedUp(tank.Id, batch.Id, Litres(brew.ToppedUpBy))
                {
                    Gravity = Fermentation.Density(beer.Original - 1.2),
                    Note = "Second runnings, boiled apart.",
                },
                20
            );
        }

        var jar = brew.YeastOf is { } day ? _jarOf[day] : jars.Receive(batch);
        jars.Pitch(jar, batch, visit);
        batch.Strain = jar.Strain;
        batch.PitchedAt = visit.Now;
    }

    private void Plan(BatchAccount batch, DemoPerson brewer)
    {
        var at = story.Calendar.At(batch.Brew.Day, batch.Brew.Hours.Filled, 30);
        story
            .At(batch.Tank, batch.Day(-7), 20, 0, brewer)
            .Do(new FillPlanned(batch.Tank.Id, batch.Id, at, Litres(batch.Brew.Litres)) { NewBatch = batch.AsNew });
    }

    private Filled Wort(BatchAccount batch, DemoPerson brewer) =>
        new(batch.Tank.Id, batch.Id, Litres(batch.Brew.Litres))
        {
            NewBatch = batch.Brew.IsPlanned ? null : batch.AsNew,
            Level = batch.Tank.Strapping.LevelOf(Litres(batch.Brew.Litres)).Value,
            TankVersion = batch.Tank.Version,
            Temperature = Celsius(batch.Beer.Degrees + 1),
            Gravity = Fermentation.Density(batch.Beer.Original),
            Note = batch.Brew.Note,
            DoneBy = [brewer.Id, story.Crew.Rasco.Id],
        };

    private void DumpTrub(BatchAccount batch)
    {
        if (batch.Tank.Type is TankType.Bucket)
        {
            return;
        }

        batch.Out(batch.Brew.Litres * 0.012, out var trub);
        story
            .At(batch.Tank, batch.Day(1), 7, 50, story.Crew.Helps(batch.Day(1)))
            .Do(new Dumped(batch.Tank.Id, batch.Id, Sediment.Trub, trub));
    }

    private void TakeYeast(BatchAccount batch)
    {
        if (batch.Tank.Type is TankType.Bucket)
        {
            return;
        }

        var day = batch.Day(batch.Beer.FinishedOn);
        var visit = story.At(batch.Tank, day, 16, 30, story.Crew.Brews(day));
        if (batch.Brew.IsHarvested)
        {
            var jar = jars.Harvest(batch, day, visit);
            _jarOf[batch.Brew.Day] = jar;
            batch.Out((jar.Amount.Milliliters / 1000) + 0.6, out _);
        }

        if (!batch.Brew.IsHarvested || batch.Beer.IsDryHopped)
        {
            batch.Out(batch.Brew.Litres * 0.015, out var yeast);
            visit.Do(new Dumped(batch.Tank.Id, batch.Id, Sediment.Yeast, yeast));
        }

        var later = batch.Day(batch.ColdOn + 1);
        batch.Out(batch.Brew.Litres * 0.006, out var rest);
        story
            .At(batch.Tank, later, 9, 15, story.Crew.Helps(later))
            .Do(new Dumped(batch.Tank.Id, batch.Id, Sediment.Yeast, rest));
    }

    private void DryHop(BatchAccount batch)
    {
        var day = batch.Day(batch.Beer.FinishedOn + 1);
        story
            .At(batch.Tank, day, 10, 0, story.Crew.Brews(day))
            .Do(
                new DryHopped(
                    batch.Tank.Id,
                    batch.Id,
                    "Leaf hops, in a bag",
                    Mass.FromGrams(920),
                    HopWay.ThroughOpening
                ),
                10
            );
        var dumped = batch.Day(batch.ColdOn);
        batch.Out(2.5, out var hops);
        story
            .At(batch.Tank, dumped, 15, 0, story.Crew.Helps(dumped))
            .Do(new Dumped(batch.Tank.Id, batch.Id, Sediment.Hops, hops));
    }

    private void PourAway(BatchAccount batch, int on, string why)
    {
        var day = batch.Day(on);
        story
            .At(batch.Tank, day, 18, 0, story.Crew.Maive)
            .Do(new Discarded(batch.Tank.Id, batch.Id, Litres(Math.Floor(batch.Left)), why) { IsRest = true });
        care.Wash(batch.Tank, day + 1, 9);
        care.Wash(batch.Tank, day + 1, 14);
    }

    private void RackAndPackage(BatchAccount batch)
    {
        var bright = batch.Tank.Code is "K3" ? story.Cellar.B2 : story.Cellar.B1;
        var heel = Math.Round(batch.Brew.Litres * HeelShare, 1);
        _bright.Rack(batch, bright, heel);
        care.Wash(batch.Tank, batch.Day(batch.RackedOn) + 1);
        _bright.Package(batch, bright);
    }

    private void Bottle(BatchAccount batch)
    {
        var day = batch.Day(batch.RackedOn);
        var heel = Math.Round(batch.Brew.Litres * HeelShare, 1);
        var bottles = (int)Math.Floor((batch.Left - heel - 0.3) * 2);
        Containers crate = new(ContainerKind.Bottle, Litres(0.5), bottles);
        Packaged bottled = new(batch.Tank.Id, batch.Id, Litres(bottles / 2.0), [crate])
        {
            IsPurged = batch.Brew.UnpurgedBecause is null,
            IsRest = true,
            Heel = Litres(heel),
        };
        Answer? answer = batch.Brew.UnpurgedBecause is { } because
            ? new(because, ["containers-not-purged"], AlreadyHappened: false)
            : null;
        story.At(batch.Tank, day, 15, 0, story.Crew.Brews(day)).Do(bottled, answer: answer);
        care.Wash(batch.Tank, day + 1);
    }

    private static Volume Litres(double litres) => Volume.FromLiters(litres);

    private static Temperature Celsius(double degrees) => Temperature.FromDegreesCelsius(degrees);
}
