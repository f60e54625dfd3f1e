using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using UnitsNet;

namespace BrewFloor.DemoSeed;

/// <summary>Slips of the pen and what became of them, an answer for what was done anyway, and notes.</summary>
internal sealed class Mishaps(Story story, Turns turns)
{
    public void All()
    {
        var c = story.Cellar;
        Misread(turns.BatchOf(c.K2, -713), 2);
        Misread(turns.BatchOf(c.P1, -555), 7);
        WrongTank(c.K3, c.P1, -547);
        WrongTank(c.B2, c.B1, -257);
        AnswerFor(turns.BatchOf(c.E1, -470));
        Note(Subject.Tank(c.P1.Id), -350, "Small leak of glycol at the left hose. Tightened, dry since.");
        Note(
            Subject.Batch(turns.BatchOf(c.K1, -280).Id),
            -270,
            "The best of this line so far: clean, dry, no sulphur."
        );
        Note(
            Subject.Tank(c.S1.Id),
            -69,
            "Nothing but the mixed culture in here from now on. Own hoses, hung on the green hook."
        );
        Note(Subject.Culture(turns.JarOf(-25).Id), -18, "Good crop, but nothing is planned for it.");
    }

    /// <summary>A digit too many, seen an hour later and set right; once the setting right needed another.</summary>
    private void Misread(BatchAccount batch, int after)
    {
        var day = batch.Day(after);
        var visit = story.At("second look", day, 19, 10, story.Crew.Elka);
        var right = batch.Beer.ReadAfter(visit.Now - batch.PitchedAt);
        visit.Do(Gravity(batch, right + 8), 60);
        var wrong = visit.Last!;
        Correct(visit, wrong, Gravity(batch, right + 0.4), "Typed from memory");
        Correct(visit, wrong, Gravity(batch, right), "Read it off the sheet again");
    }

    private static void Correct(Visit visit, LogEntry wrong, LogEntry anew, string reason) =>
        visit.Do(
            new Corrected(wrong.Id, anew with { Id = wrong.Id, At = wrong.At }, reason)
            {
                Touched = [.. wrong.Subjects],
            },
            5
        );

    private static GravityTaken Gravity(BatchAccount batch, double plato) =>
        new(batch.Tank.Id, batch.Id, Fermentation.Density(Math.Round(plato, 1)));

    private void WrongTank(Tank wrong, Tank right, int day)
    {
        var visit = story
            .At("wrong tank", day, 20, 15, story.Crew.Rasco)
            .Do(new TemperatureTaken(wrong.Id, Temperature.FromDegreesCelsius(12.9)), 3);
        var mistaken = visit.Last!;
        visit
            .Do(
                new Struck([mistaken.Id], $"I stood before {right.Code}, not {wrong.Code}")
                {
                    Touched = [.. mistaken.Subjects],
                }
            )
            .Do(new TemperatureTaken(right.Id, Temperature.FromDegreesCelsius(12.9)));
    }

    private void AnswerFor(BatchAccount batch) =>
        story
            .At(batch.Tank, batch.Day(1), 18, 0, story.Crew.Torvin)
            .Do(
                new Answered(batch.Filled!.Id, "Kept apart from the big tanks. Smelled and tasted after a day: clean.")
                {
                    Touched = [.. batch.Filled!.Subjects],
                }
            );

    private void Note(Subject about, int day, string words) =>
        story.At("note", day, 21, 0, story.Crew.Brews(day)).Do(new Noted(about) { Note = words });
}
