using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using UnitsNet;

namespace BrewFloor.DemoSeed;

/// <summary>Yesterday and today, laid out so that the floor shows the same at any hour of the day.</summary>
/// <remarks>
/// Nothing of today but readings: wherever now cuts it off, what was due stays due. The first reading is at the first moment
/// of the day, so that there is one of today in the smallest hours too.
/// </remarks>
internal sealed class LastDays(Story story, Care care, Turns turns)
{
    public void All()
    {
        var c = story.Cellar;
        Ferments(turns.BatchOf(c.K1, -2));
        Fermentation.Read(turns.BatchOf(c.K2, -1), story.At(c.K2, -1, 19, 30, story.Crew.Elka));
        StandsCold(turns.BatchOf(c.P1, -33));
        IsReady(c.P2);
    }

    private void Ferments(BatchAccount batch)
    {
        Fermentation.Read(batch, story.At(batch.Tank, -1, 19, 0, story.Crew.Rasco));
        Visit night = new(story, story.Crew.Rasco, story.Calendar.At(0, 0));
        night.Do(new Noted(Subject.Tank(batch.Tank.Id)) { Note = "Looked in on the way home from the late shift." }, 0);
        Fermentation.Read(batch, night);
        Fermentation.Read(batch, story.At(batch.Tank, 0, 18, 30, story.Crew.Elka));
    }

    private void StandsCold(BatchAccount batch) =>
        story
            .At(batch.Tank, -1, 18, 0, story.Crew.Rasco)
            .Do(new TemperatureTaken(batch.Tank.Id, Temperature.FromDegreesCelsius(1.9)) { BatchId = batch.Id })
            .Do(new PressureTaken(batch.Tank.Id, Pressure.FromKilopascals(70)));

    /// <summary>Sanitized yesterday afternoon and sealed under CO2, for the brew day after tomorrow.</summary>
    private void IsReady(Tank tank)
    {
        care.Passivate(tank, -8);
        care.Sanitize(tank, -1, 15, Closure.Sealed, isUnderGas: true)
            .Do(new PressureTaken(tank.Id, Pressure.FromKilopascals(55)));
        var batch = story.Dice.Id("planned");
        story
            .At(tank, -1, 20, 30, story.Crew.Torvin)
            .Do(
                new FillPlanned(tank.Id, batch, story.Calendar.At(2, 10), Volume.FromLiters(168))
                {
                    NewBatch = new BatchAccount(new(2, tank, Beer.BargeFog), batch).AsNew,
                }
            );
    }
}
