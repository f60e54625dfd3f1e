using BrewFloor.Domain.Log;
using BrewFloor.Domain.Yeast;

namespace BrewFloor.Domain.Tests.Log;

/// <summary>Entries about entries, and notes.</summary>
internal static class RandomMending
{
    private const int Recent = 40;

    public static readonly Dictionary<string, Maker> Makers = new()
    {
        ["noted"] = (r, floor) => new Noted(AnySubject(r, floor)) { Note = "Smells of bread" },
        ["allowed"] = (r, floor) =>
            new Allowed(
                r.TankId(floor),
                r.OneOf("filled", "sanitized", "rinsed"),
                [r.Chance(0.95) ? "not-sanitized" : "vent-closed"],
                r.Now.AddHours(r.Whole(1, 24)),
                "Steamed at noon"
            ),
        ["answered"] = Answer,
        ["corrected"] = Correct,
        ["struck"] = Strike,
    };

    private static Subject AnySubject(RandomFloor r, Floor floor) =>
        r.OneOf<Subject>([.. floor.States.Select(s => s.Subject)]);

    private static Answered? Answer(RandomFloor r, Floor floor)
    {
        (Subject Subject, DoneAnyway Done)[] open =
        [
            .. from state in floor.States from done in state.Unanswered select (state.Subject, done),
        ];
        if (open.Length is 0)
        {
            return null;
        }

        var (subject, anyway) = r.OneOf<(Subject, DoneAnyway)>(open);
        return new Answered(r.Chance(0.95) ? anyway.Moment.Entry : r.NewId(), "Nothing came of it")
        {
            Touched = [subject],
        };
    }

    private static Corrected? Correct(RandomFloor r, Floor floor)
    {
        if (Pick(r, entry => entry is not (Corrected or Struck or Answered)) is not { } old)
        {
            return null;
        }

        var anew = Otherwise(r, old) with { DoneAnyway = [] };
        return new Corrected(old.Id, anew, "Misread") { Touched = [.. old.Subjects] };
    }

    private static Struck? Strike(RandomFloor r, Floor floor)
    {
        if (Pick(r, entry => entry is not Struck && (entry.Nature is not Nature.Done || r.Chance(0.3))) is not { } old)
        {
            return null;
        }

        return new Struck([old.Id], "It was another tank") { Touched = [.. old.Subjects] };
    }

    /// <summary>A recent entry as it was first written, if it still stands.</summary>
    private static LogEntry? Pick(RandomFloor r, Func<LogEntry, bool> fits)
    {
        var struck = r.Stored.OfType<Struck>().SelectMany(s => s.Entries).ToHashSet();
        LogEntry[] recent = [.. r.Stored.TakeLast(Recent).Where(e => !struck.Contains(e.Id) && fits(e))];
        return recent.Length is 0 ? null : r.OneOf<LogEntry>(recent);
    }

    private static LogEntry Otherwise(RandomFloor r, LogEntry old) =>
        old switch
        {
            Domain.Tanks.Filled filled => filled with { Volume = r.Litres(10, filled.Volume.Liters) },
            Pitched pitched => pitched with { Note = "The other jar was left" },
            _ when r.Chance(0.3) => old with { At = old.At - TimeSpan.FromMinutes(r.Whole(1, 30)) },
            _ => old with { Note = "Wrote it down wrong" },
        };
}
