using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Tanks;
using UnitsNet;

namespace BrewFloor.DemoSeed;

/// <summary>What is read while a beer ferments and cools, and what the controllers are told.</summary>
internal sealed class Fermentation(Story story)
{
    private static readonly Temperature ColdSet = Temperature.FromDegreesCelsius(2);

    /// <summary>In kPa gauge: what a spunding valve holds.</summary>
    private static readonly Pressure Spunded = Pressure.FromKilopascals(80);

    /// <summary>Every morning until it is finished, a mixed culture every week after that.</summary>
    public void Readings(BatchAccount batch)
    {
        var last = batch.Brew.Discarded?.On ?? batch.Beer.FinishedOn;
        for (var after = 1; after <= last; after++)
        {
            Morning(batch, after);
        }

        for (var after = last + 7; batch.Beer.IsMixed && batch.Day(after) <= 0; after += 7)
        {
            Morning(batch, after);
        }

        if (batch.Tank.Type is TankType.PressureRatedConical)
        {
            CloseSpundingValve(batch);
        }
    }

    /// <summary>A gravity and a temperature, now and then the pH.</summary>
    public static void Read(BatchAccount batch, Visit visit)
    {
        var read = batch.Beer.ReadAfter(visit.Now - batch.PitchedAt);
        var swing = Dice.Swing($"degrees {batch.Name} {read}", 0.3);
        visit
            .Do(
                new GravityTaken(batch.Tank.Id, batch.Id, batch.Tank.IsStainless ? Density(read) : Hydrometer(read)),
                minutes: 1
            )
            .Do(
                new TemperatureTaken(batch.Tank.Id, Tenths(batch.Beer.Degrees + swing)) { BatchId = batch.Id },
                minutes: 4
            );
    }

    public static GravityRead Density(double plato) =>
        new(plato, GravityScale.Plato, Instrument.DensityMeter, Temperature.FromDegreesCelsius(20));

    /// <summary>Told to be cold, and read until it is.</summary>
    public void Cool(BatchAccount batch)
    {
        var day = batch.Day(batch.CrashedOn);
        story
            .At(batch.Tank, day, 11, 0, story.Crew.Brews(day))
            .Do(new TemperatureSet(batch.Tank.Id, ColdSet) { BatchId = batch.Id });
        (int After, double Degrees)[] cooling =
        [
            (1, 8.5),
            (2, 2.4),
            (5, 2.1),
            (9, 2.0),
            (14, 2.2),
            (18, 1.9),
            (22, 2.0),
        ];
        foreach (var (after, degrees) in cooling.Where(read => batch.CrashedOn + read.After <= batch.RackedOn))
        {
            Cold(batch, batch.CrashedOn + after, degrees);
        }
    }

    private void Cold(BatchAccount batch, int after, double degrees)
    {
        var visit = story
            .At(batch.Tank, batch.Day(after), 8, 0, story.Crew.Helps(batch.Day(after)))
            .Do(new TemperatureTaken(batch.Tank.Id, Tenths(degrees)) { BatchId = batch.Id });
        if (batch.Tank.Type is TankType.PressureRatedConical)
        {
            visit.Do(new PressureTaken(batch.Tank.Id, Pressure.FromKilopascals(Math.Round(68 + degrees))));
        }

        if (batch.Beer.IsDryHopped)
        {
            visit.Do(new GravityTaken(batch.Tank.Id, batch.Id, Density(batch.Beer.Final)));
        }
    }

    private void Morning(BatchAccount batch, int after)
    {
        var day = batch.Day(after);
        var visit = story.At(batch.Tank, day, 7, 30, story.Crew.Helps(day));
        Read(batch, visit);
        if (after == 1 || after == batch.Beer.FinishedOn)
        {
            var ph = after == 1 ? 5.1 : 4.3;
            visit.Do(
                new PhTaken(batch.Tank.Id, Math.Round(ph + Dice.Swing($"ph {batch.Name} {after}", 0.08), 2))
                {
                    BatchId = batch.Id,
                }
            );
        }
    }

    /// <summary>Two days before the end: what is still to ferment carbonates the beer.</summary>
    private void CloseSpundingValve(BatchAccount batch)
    {
        var from = batch.Beer.FinishedOn - 5;
        var day = batch.Day(from);
        story
            .At(batch.Tank, day, 18, 0, story.Crew.Brews(day))
            .Do(new Closed(batch.Tank.Id) { Closure = Closure.Sealed, BatchId = batch.Id })
            .Do(new PressureSet(batch.Tank.Id, Spunded) { BatchId = batch.Id });
        double[] rising = [34, 61, 78, 80, 80];
        for (var after = 1; after <= rising.Length; after++)
        {
            story
                .At(batch.Tank, day + after, 7, 40, story.Crew.Helps(day + after))
                .Do(new PressureTaken(batch.Tank.Id, Pressure.FromKilopascals(rising[after - 1])));
        }
    }

    private static GravityRead Hydrometer(double plato) =>
        new(
            Math.Round(new Brewing.Extract.DegreesPlato(plato).ToGravity().Value.Value, 3),
            GravityScale.Sg2020,
            Instrument.Hydrometer,
            Temperature.FromDegreesCelsius(20)
        );

    private static Temperature Tenths(double degrees) => Temperature.FromDegreesCelsius(Math.Round(degrees, 1));
}
