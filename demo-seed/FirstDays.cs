using BrewFloor.Brewing.Extract;
using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Tanks;
using BrewFloor.Domain.Yeast;
using UnitsNet;

namespace BrewFloor.DemoSeed;

/// <summary>The day the log begins: tanks as they are found, beer in one of them, old yeast in the fridge.</summary>
internal sealed class FirstDays(Story story, Care care, Jars jars)
{
    private const int First = -730;

    public void All()
    {
        var c = story.Cellar;
        foreach (
            var (tank, driedOn) in ((Tank, int?)[])
                [(c.K1, -758), (c.P1, -752), (c.B1, -755), (c.B2, null), (c.S1, null), (c.E1, null)]
        )
        {
            TakeOver(tank, Soil.Clean, driedOn);
        }

        TakeOver(c.K3, Soil.Soiled, driedOn: null);
        care.Wash(c.K3, First + 1);
        BeerIn(c.K2);
        OldYeast();
    }

    private void TakeOver(Tank tank, Soil soil, int? driedOn)
    {
        story
            .At(tank, First, 10, 0, story.Crew.Maive)
            .Do(
                new TankTakenOver(tank.Id)
                {
                    Soil = soil,
                    Gas = Gas.Air,
                    Closure = Closure.Vented,
                    Bath = driedOn is null ? null : BathKind.Citric,
                    DriedOn = driedOn is { } day ? story.Calendar.On(day) : null,
                }
            )
            .Do(new PartsSeen(tank.Id, tank.Fitted()));
        if (driedOn is { } dried)
        {
            care.WasDriedOn(tank, dried);
        }
    }

    private void BeerIn(Tank tank)
    {
        var batch = story.Dice.Id("batch taken over");
        var gravity = Fermentation.Density(2.6);
        story
            .At(tank, First, 11, 0, story.Crew.Maive)
            .Do(
                new TankTakenOver(tank.Id)
                {
                    Soil = Soil.InUse,
                    Gas = Gas.CarbonDioxide,
                    Closure = Closure.Vented,
                    Bath = BathKind.Citric,
                    DriedOn = story.Calendar.On(-770),
                },
                5
            )
            .Do(new PartsSeen(tank.Id, tank.Fitted()), 5)
            .Do(
                new BatchTakenOver(
                    tank.Id,
                    new(batch, "Ferry Bell", "Bitter", BeerKind.Ale)
                    {
                        OriginalGravity = new DegreesPlato(10.2).ToGravity().Value,
                        LimitOfAttenuation = new DegreesPlato(2.7).ToGravity().Value,
                        ColourEbc = 24,
                    }
                )
                {
                    Volume = Volume.FromLiters(208),
                    Gravity = gravity,
                    FilledAt = story.Calendar.At(First - 13, 12),
                    PitchedAt = story.Calendar.At(First - 13, 14),
                    Generation = 2,
                }
            );
        care.WasDriedOn(tank, -770);
        story.At(tank, First + 2, 12, 0, story.Crew.Elka).Do(new GravityTaken(tank.Id, batch, gravity));
        story
            .At(tank, First + 3, 15, 0, story.Crew.Elka)
            .Do(
                new Packaged(
                    tank.Id,
                    batch,
                    Volume.FromLiters(205),
                    [new(ContainerKind.Cask, Volume.FromLiters(41), 5)]
                )
                {
                    IsPurged = true,
                },
                60
            )
            .Do(new Emptied(tank.Id, batch, Volume.FromLiters(1.8)));
        care.Wash(tank, First + 4);
    }

    private void OldYeast()
    {
        var id = story.Dice.Id("old slurry");
        story
            .At("fridge", First, 12, 30, story.Crew.Maive)
            .Do(
                new CultureTakenOver(
                    new(id, Seasons.AleStrain, CultureKind.Slurry),
                    YeastAmount.Of(Volume.FromLiters(1.4)),
                    GenerationAtLeast: 3
                )
                {
                    StoredAt = Jars.Fridge,
                }
            );
        jars.Count(new(id, Seasons.AleStrain, CultureKind.Slurry, First - 20, default), First + 1);
        jars.Discard(id, Seasons.AleStrain, First + 1, "Too much of it is dead, and nobody knows how old it is");
    }
}
