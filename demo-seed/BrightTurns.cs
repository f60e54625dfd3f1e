using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Tanks;
using UnitsNet;

namespace BrewFloor.DemoSeed;

/// <summary>Over to the bright tank under CO2, carbonated there, into kegs, casks and bottles, and washed.</summary>
internal sealed class BrightTurns(Story story, Care care)
{
    private const int DaysInBright = 3;
    private const double HeelShare = 0.007;

    /// <summary>In kPa gauge, at 2 °C.</summary>
    private static readonly Pressure Held = Pressure.FromKilopascals(85);

    /// <summary>Sanitized and filled with gas in the morning, then all of it over.</summary>
    public void Rack(BatchAccount batch, Tank bright, double heel)
    {
        var day = batch.Day(batch.RackedOn);
        care.KeepFilm(bright, day);
        var visit = care.Sanitize(bright, day, 8, Closure.Vented, isUnderGas: true)
            .Do(new Purged(bright.Id, Gas.CarbonDioxide) { Volumes = 3 }, 20);
        batch.Out(1, out _); // what a level tells less than the books
        var there = Volume.FromLiters(Math.Round(batch.Left));
        visit
            .Do(
                new LevelMeasured(batch.Tank.Id, there)
                {
                    BatchId = batch.Id,
                    Level = batch.Tank.Strapping.LevelOf(there).Value,
                    TankVersion = batch.Tank.Version,
                },
                8
            )
            .Do(
                new Racked(
                    batch.Tank.Id,
                    bright.Id,
                    batch.Id,
                    Volume.FromLiters(Over(batch, there, heel)),
                    Volume.FromLiters(heel)
                ),
                35
            )
            .Do(new TemperatureSet(bright.Id, Temperature.FromDegreesCelsius(2)) { BatchId = batch.Id })
            .Do(new Closed(bright.Id) { Closure = Closure.Sealed })
            .Do(new PressureSet(bright.Id, Held));
    }

    /// <summary>Three days later: read once more, kegs first, what is left into smaller ones.</summary>
    public void Package(BatchAccount batch, Tank bright)
    {
        var first = batch.Day(batch.RackedOn);
        foreach (var (day, pressure) in ((int, double)[])[(first + 1, 82), (first + DaysInBright, 85)])
        {
            story
                .At(bright, day, 8, 15, story.Crew.Helps(day))
                .Do(new PressureTaken(bright.Id, Pressure.FromKilopascals(pressure)), minutes: 1)
                .Do(new TemperatureTaken(bright.Id, Temperature.FromDegreesCelsius(2.1)) { BatchId = batch.Id });
        }

        var last = first + DaysInBright;
        var heel = Math.Round(batch.Left * HeelShare, 1);
        var (most, rest) = Shares(batch, batch.Left - heel - 0.5);
        story
            .At(bright, last, 16, 0, story.Crew.Brews(last))
            .Do(Full(batch, bright, [most]), 70)
            .Do(Full(batch, bright, [rest]) with { IsRest = true, Heel = Volume.FromLiters(heel) });
        if (!batch.Brew.BrightWaits)
        {
            care.Wash(bright, last + 1);
        }
    }

    private static double Over(BatchAccount batch, Volume there, double heel)
    {
        var over = Math.Floor(there.Liters - heel - 0.5);
        batch.Out(batch.Left - over, out _);
        return over;
    }

    private static Packaged Full(BatchAccount batch, Tank bright, Containers[] containers) =>
        new(bright.Id, batch.Id, Volume.FromLiters(containers.Sum(c => c.Size.Liters * c.Count)), [.. containers])
        {
            IsPurged = true,
        };

    /// <summary>Bitter goes into casks of 41 L, all else into kegs of 30 L; the rest into bottles, of dry-hopped beer into small kegs.</summary>
    private static (Containers Large, Containers Small) Shares(BatchAccount batch, double litres)
    {
        var (kind, size) = batch.Brew.Beer == Beer.FerryBell ? (ContainerKind.Cask, 41.0) : (ContainerKind.Keg, 30.0);
        var count = (int)Math.Floor((litres - 2) / size);
        var left = litres - (count * size);
        var (small, smallSize) = batch.Beer.IsDryHopped ? (ContainerKind.Keg, 2.0) : (ContainerKind.Bottle, 0.5);
        return (
            new(kind, Volume.FromLiters(size), count),
            new(small, Volume.FromLiters(smallSize), Math.Max(1, (int)Math.Floor(left / smallSize)))
        );
    }
}
