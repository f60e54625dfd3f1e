using System.Collections.Immutable;
using BrewFloor.Domain.Batches;
using BrewFloor.Domain.House;
using BrewFloor.Domain.Items;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Domain.Yeast;

namespace BrewFloor.DemoSeed.Tests;

/// <summary>The scenario's log played on the pure domain, entry by entry: judged, recorded over, folded.</summary>
internal sealed class Played
{
    private readonly States _blank;
    private readonly List<(long Seq, LogEntry Entry)> _log = [];
    private readonly List<(DateTimeOffset Until, States States)> _stood = [];

    public Played(DemoScenario scenario, TimeZoneInfo zone)
    {
        Scenario = scenario;
        Rules = HouseRules.Defaults(zone) with { Altitude = scenario.Site.Altitude };
        _blank = States.Blank(scenario);
        foreach (var (entry, _, answer) in scenario.Log)
        {
            Write(entry, answer);
        }
    }

    public DemoScenario Scenario { get; }

    public HouseRules Rules { get; }

    /// <summary>As it stands after the last entry.</summary>
    public Floor Floor => Now.AsFloor(Rules);

    /// <summary>What was not allowed by its answer, in words.</summary>
    public List<string> Refused { get; } = [];

    /// <summary>Entries with at least one objection, in words.</summary>
    public List<string> Objected { get; } = [];

    /// <summary>As it stood at a moment.</summary>
    public Floor At(DateTimeOffset now) => _stood.Last(stood => stood.Until <= now).States.AsFloor(Rules);

    private States Now => _stood is [.., var last] ? last.States : _blank;

    private void Write(LogEntry entry, Answer answer)
    {
        var verdict = entry.JudgedOn(Now.AsFloor(Rules, entry.Subjects));
        if (verdict.Objections.Count > 0)
        {
            var words = $"{InWords(entry)}: {string.Join("; ", verdict.Objections.Select(InWords))}";
            Objected.Add(words);
            if (!verdict.Allows(answer))
            {
                Refused.Add(words);
            }
        }

        var written = entry with { DoneAnyway = verdict.DoneAnyway(answer) };
        _log.Add((_log.Count, written));
        var after = written is Corrected or Struck
            ? AsItStands.Of(_log).Aggregate(_blank, (states, standing) => states.After(standing, Rules))
            : Now.After(written, Rules);
        _stood.Add((entry.At, after));
    }

    private string InWords(LogEntry entry) =>
        $"{entry.At:u} {EntryKinds.NameOf(entry)} on {string.Join(' ', entry.Subjects.Select(Now.NameOf))}";

    private static string InWords(Objection objection) =>
        $"{objection.Level} {objection.Code} ({string.Join(", ", objection.Numbers.Select(n => $"{n.Name} {n.Value}"))})";
}

/// <summary>All things that come up in a log, and what is known of each.</summary>
internal sealed record States(
    ImmutableDictionary<Guid, (Tank Thing, TankState State)> Tanks,
    ImmutableDictionary<Guid, (Batch Thing, BatchState State)> Batches,
    ImmutableDictionary<Guid, (Culture Thing, CultureState State)> Cultures,
    ImmutableDictionary<Guid, (Item Thing, ItemState State)> Items
)
{
    /// <summary>Nothing known of any of them.</summary>
    public static States Blank(DemoScenario scenario)
    {
        LogEntry[] log = [.. scenario.Log.Select(line => line.Entry)];
        return new(
            scenario.Tanks.ToImmutableDictionary(tank => tank.Id, tank => (tank, new TankState(tank.Id))),
            log.Select(NewThings.BatchOf)
                .OfType<NewBatch>()
                .Select((batch, i) => (NewThings.Made(batch, i + 1), new BatchState(batch.Id)))
                .ToImmutableDictionary(batch => batch.Item1.Id),
            log.SelectMany(NewThings.CulturesOf)
                .Select((culture, i) => (NewThings.Made(culture, i + 1), new CultureState(culture.Id)))
                .ToImmutableDictionary(culture => culture.Item1.Id),
            log.Select(NewThings.ItemOf)
                .OfType<NewItem>()
                .Select((item, i) => (NewThings.Made(item, i + 1), new ItemState(item.Id)))
                .ToImmutableDictionary(item => item.Item1.Id)
        );
    }

    public Floor AsFloor(HouseRules rules) =>
        new(rules)
        {
            Tanks = [.. Tanks.Values.OrderBy(tank => tank.Thing.Code, StringComparer.Ordinal)],
            Batches = [.. Batches.Values.OrderBy(batch => batch.Thing.Number)],
            Cultures = [.. Cultures.Values.OrderBy(culture => culture.Thing.Number)],
            Items = [.. Items.Values.OrderBy(item => item.Thing.Number)],
        };

    /// <summary>Only what an entry is about: all that a guard sees at the door.</summary>
    public Floor AsFloor(HouseRules rules, IEnumerable<Subject> subjects)
    {
        Guid[] ids = [.. subjects.Select(subject => subject.Id).Distinct()];
        return new(rules)
        {
            Tanks = [.. ids.Where(Tanks.ContainsKey).Select(id => Tanks[id])],
            Batches = [.. ids.Where(Batches.ContainsKey).Select(id => Batches[id])],
            Cultures = [.. ids.Where(Cultures.ContainsKey).Select(id => Cultures[id])],
            Items = [.. ids.Where(Items.ContainsKey).Select(id => Items[id])],
        };
    }

    public States After(LogEntry entry, HouseRules rules)
    {
        var after = AsFloor(rules, entry.Subjects).After(entry);
        return new(
            Tanks.SetItems(after.Tanks.Select(tank => KeyValuePair.Create(tank.Thing.Id, tank))),
            Batches.SetItems(after.Batches.Select(batch => KeyValuePair.Create(batch.Thing.Id, batch))),
            Cultures.SetItems(after.Cultures.Select(culture => KeyValuePair.Create(culture.Thing.Id, culture))),
            Items.SetItems(after.Items.Select(item => KeyValuePair.Create(item.Thing.Id, item)))
        );
    }

    public string NameOf(Subject subject) =>
        Tanks.TryGetValue(subject.Id, out var tank) ? tank.Thing.Code
        : Batches.TryGetValue(subject.Id, out var batch) ? $"{batch.Thing.Number} {batch.Thing.Name}"
        : Cultures.TryGetValue(subject.Id, out var culture) ? culture.Thing.Strain
        : Items[subject.Id].Thing.Name;
}
