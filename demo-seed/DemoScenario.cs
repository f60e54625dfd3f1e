using BrewFloor.Domain;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using UnitsNet;

namespace BrewFloor.DemoSeed;

/// <summary>The place of the club.</summary>
/// <param name="Altitude">In m above the sea.</param>
public sealed record DemoSite(string Name, Length Altitude);

/// <summary>Two years of an invented club: its people, its tanks, its log. The same for the same day and time zone.</summary>
/// <param name="Log">
/// In the order of the log, each with whoever logged it and what they said to the floor's objections. Times are in UTC, whole
/// microseconds, and none is later than the moment that was asked for.
/// </param>
public sealed record DemoScenario(
    DemoSite Site,
    Listed<DemoPerson> People,
    Listed<Tank> Tanks,
    Listed<(LogEntry Entry, Guid LoggedBy, Answer Answer)> Log
)
{
    private static readonly DemoSite Quillmoor = new("Quillmoor Brewing Club", Length.FromMeters(212));

    /// <summary>The scenario as it stands at <paramref name="now"/>.</summary>
    /// <param name="zone">Of the site: days and hours are those of its clocks.</param>
    public static DemoScenario For(DateTimeOffset now, TimeZoneInfo zone)
    {
        var today = DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(now, zone).DateTime);
        Dice dice = new($"{zone.Id} {today:O}");
        Calendar calendar = new(today, zone);
        Crew crew = new(dice);
        Cellar cellar = new(dice, calendar);
        Story story = new(dice, calendar, crew, cellar);
        Tell(story);
        return new(Quillmoor, [.. crew.All], [.. cellar.All], story.Until(now));
    }

    /// <summary>The log in groups that can each go through the door in one piece: an entry that names another goes alone.</summary>
    /// <param name="most">Entries in a group.</param>
    public IEnumerable<Listed<(LogEntry Entry, Guid LoggedBy, Answer Answer)>> Groups(int most)
    {
        List<(LogEntry Entry, Guid LoggedBy, Answer Answer)> group = [];
        foreach (var line in Log)
        {
            var isAlone = line.Entry is Corrected or Struck or Answered;
            if (group.Count > 0 && (isAlone || group.Count >= most))
            {
                yield return [.. group];
                group.Clear();
            }

            group.Add(line);
            if (isAlone)
            {
                yield return [.. group];
                group.Clear();
            }
        }

        if (group.Count > 0)
        {
            yield return [.. group];
        }
    }

    private static void Tell(Story story)
    {
        Care care = new(story);
        Jars jars = new(story);
        Turns turns = new(story, care, jars);
        new FirstDays(story, care, jars).All();
        new Upkeep(story, care).All();
        foreach (var brew in Seasons.Of(story.Cellar).OrderBy(brew => brew.Day))
        {
            turns.Run(brew);
        }

        new Mishaps(story, turns).All();
        new LastDays(story, care, turns).All();
    }
}
