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

    /// <summary>The log in groups that can each go through the door in one piece: what an entry names is in one before, and named once.</summary>
    /// <param name="most">Entries in a group.</param>
    public IEnumerable<Listed<(LogEntry Entry, Guid LoggedBy, Answer Answer)>> Groups(int most)
    {
        List<(LogEntry Entry, Guid LoggedBy, Answer Answer)> group = [];
        foreach (var line in Log)
        {
            var known = group.SelectMany(l => (Guid[])[l.Entry.Id, .. NamedBy(l.Entry)]);
            if (group.Count >= most || NamedBy(line.Entry).Intersect(known).Any())
            {
                yield return [.. group];
                group.Clear();
            }

            group.Add(line);
        }

        if (group.Count > 0)
        {
            yield return [.. group];
        }
    }

    private static Listed<Guid> NamedBy(LogEntry entry) =>
        entry switch
        {
            Corrected corrected => [corrected.Entry],
            Struck struck => struck.Entries,
            Answered answered => [answered.Entry],
            _ => [],
        };

    private static void Tell(Story story)
    {
        Shelf shelf = new(story);
        Care care = new(story, shelf);
        Jars jars = new(story);
        Turns turns = new(story, care, jars);
        new FirstDays(story, care, jars).All();
        new Upkeep(story, care, shelf).All();
        foreach (var brew in Seasons.Of(story.Cellar).OrderBy(brew => brew.Day))
        {
            turns.Run(brew);
        }

        new Mishaps(story, turns).All();
        new LastDays(story, care, turns).All();
        shelf.Keep();
        shelf.Deliver();
    }
}
