using BrewFloor.Domain;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;

namespace BrewFloor.DemoSeed;

/// <summary>The log while it is written: who wrote what when, with which answer.</summary>
internal sealed class Story(Dice dice, Calendar calendar, Crew crew, Cellar cellar)
{
    private readonly List<(LogEntry Entry, Guid LoggedBy, Answer Answer)> _lines = [];

    public Dice Dice => dice;

    public Calendar Calendar => calendar;

    public Crew Crew => crew;

    public Cellar Cellar => cellar;

    /// <summary>All that has happened by <paramref name="now"/>, in the order of the log.</summary>
    public Listed<(LogEntry Entry, Guid LoggedBy, Answer Answer)> Until(DateTimeOffset now) =>
        [.. _lines.Where(line => line.Entry.At <= now).OrderBy(line => line.Entry.At)];

    /// <summary>Everything told so far, in no order.</summary>
    public IEnumerable<LogEntry> Told => _lines.Select(line => line.Entry);

    public LogEntry Write(LogEntry entry, DateTimeOffset at, DemoPerson who, Answer? answer = null)
    {
        var written = entry with { Id = dice.Id($"entry {_lines.Count}"), At = at };
        _lines.Add((written, who.Id, answer ?? Answer.None));
        return written;
    }

    /// <summary>Somebody comes to a tank about that time of the day: a few minutes later, the same for all that happens to it then.</summary>
    public Visit At(Tank tank, int day, int hour, int minute, DemoPerson who) =>
        new(this, who, calendar.At(day, hour, minute).AddMinutes(Dice.Below($"late {tank.Code} {day}", 9)));

    /// <summary>The same for what is about no tank.</summary>
    public Visit At(string what, int day, int hour, int minute, DemoPerson who) =>
        new(this, who, calendar.At(day, hour, minute).AddMinutes(Dice.Below($"late {what} {day}", 9)));
}

/// <summary>What somebody writes one after the other, while time passes.</summary>
internal sealed class Visit(Story story, DemoPerson who, DateTimeOffset at)
{
    public DateTimeOffset Now { get; private set; } = at;

    /// <summary>The last entry written.</summary>
    public LogEntry? Last { get; private set; }

    /// <summary>Writes an entry; then some minutes pass.</summary>
    public Visit Do(LogEntry entry, int minutes = 2, Answer? answer = null)
    {
        Last = story.Write(entry, Now, who, answer);
        return Wait(minutes);
    }

    public Visit Wait(int minutes)
    {
        Now = Now.AddMinutes(minutes);
        return this;
    }
}
