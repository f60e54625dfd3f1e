using System.Collections.Immutable;
using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Items;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Domain.Yeast;

namespace BrewFloor.Domain.Tests.Log;

/// <summary>A floor log in memory, by the rules of the log: judged, put in its place, and the rest folded anew.</summary>
internal sealed class PlayedFloor(Floor empty)
{
    private readonly record struct Line(
        long Seq,
        LogEntry Entry,
        Listed<Objection> Judged,
        ImmutableDictionary<Subject, State> After
    );

    private readonly Dictionary<Guid, Tank> _tanks = empty.Tanks.ToDictionary(t => t.Thing.Id, t => t.Thing);
    private readonly Dictionary<Guid, Batch> _batches = [];
    private readonly Dictionary<Guid, Culture> _cultures = [];
    private readonly Dictionary<Guid, Item> _items = [];
    private readonly List<Line> _standing = [];
    private readonly Dictionary<Guid, long> _seqs = [];
    private readonly Dictionary<Guid, Guid> _corrects = [];

    /// <summary>Everything that was stored.</summary>
    public List<(long Seq, LogEntry Entry)> Log { get; } = [];

    public ImmutableDictionary<Subject, State> States => _standing is [.., var last] ? last.After : [];

    /// <summary>The floor a brewer sees: tanks, the beer in them or planned for them, yeast that is left, the stock.</summary>
    public Floor Now
    {
        get
        {
            var states = States;
            var tanks = _tanks.Keys.Select(id => (TankState)StateOf(states, Subject.Tank(id))).ToArray();
            var near = tanks.SelectMany(t => (Guid?[])[t.BatchId, t.Planned?.BatchId]).OfType<Guid>().Distinct();
            var left = states.Values.OfType<CultureState>().Where(culture => culture.IsUsable);
            return FloorOf(
                states,
                [
                    .. tanks.Select(t => t.Subject),
                    .. near.Select(Subject.Batch),
                    .. left.Select(c => c.Subject),
                    .. _items.Keys.Select(Subject.Item),
                ]
            );
        }
    }

    /// <summary>The entry as stored; null: refused.</summary>
    public LogEntry? Append(LogEntry entry)
    {
        Welcome(entry is Corrected { Replacement: var anew } ? anew : entry);
        return entry switch
        {
            Corrected corrected => Mend(corrected, [corrected.Entry], StandingOf(corrected)),
            Struck struck => Mend(struck, [.. struck.Entries.Select(FirstId)], null),
            _ => Put(entry),
        };
    }

    /// <summary>The states after entries in their order, from nothing.</summary>
    public static ImmutableDictionary<Subject, State> Fold(IEnumerable<LogEntry> entries) =>
        entries.Aggregate(ImmutableDictionary<Subject, State>.Empty, After);

    private LogEntry? Put(LogEntry entry)
    {
        var verdict = entry.JudgedOn(FloorOf(Before(entry.At), entry.Subjects));
        var answer = RandomFloor.AnswerTo(verdict);
        if (!verdict.Allows(answer))
        {
            return null;
        }

        var stored = entry with { DoneAnyway = verdict.DoneAnyway(answer) };
        return Keep(stored, [], [(Log.Count + 1, stored, verdict.Objections)]) ? stored : null;
    }

    private LogEntry? Mend(LogEntry entry, Guid[] firstIds, (LogEntry Entry, Listed<Objection> Judged)? anew)
    {
        if (
            entry.JudgedOn(FloorOf(States, entry.Subjects)).Objections is not []
            || (entry is Corrected && anew is null)
        )
        {
            return null;
        }

        var stored = entry is Corrected corrected ? corrected with { Replacement = anew!.Value.Entry } : entry;
        var log = Log.Append((Log.Count + 1, stored));
        var ofThem = log.Where(line =>
            line.Entry is Struck || firstIds.Contains(line.Entry is Corrected c ? c.Entry : line.Entry.Id)
        );
        (long, LogEntry, Listed<Objection>)[] standing =
        [
            .. AsItStands.Of(ofThem).Select(e => (SeqOf(e.Id), e, anew?.Judged ?? JudgedAs(e.Id))),
        ];
        return Keep(stored, [.. firstIds], standing) ? stored : null;
    }

    private (LogEntry, Listed<Objection>)? StandingOf(Corrected corrected)
    {
        if (_standing.All(line => line.Entry.Id != corrected.Entry))
        {
            return null; // struck
        }

        var first = Math.Min(
            _standing.FindIndex(l => l.Entry.Id == corrected.Entry),
            AfterAll(corrected.Replacement.At)
        );
        var before = _standing[first..]
            .Where(l => l.Entry.Id != corrected.Entry && l.Entry.At <= corrected.Replacement.At)
            .Aggregate(first is 0 ? [] : _standing[first - 1].After, (states, line) => After(states, line.Entry));
        var verdict = corrected.StandingJudgedOn(FloorOf(before, corrected.Standing.Subjects));
        var answer = RandomFloor.AnswerTo(verdict);
        return verdict.Allows(answer)
            ? (corrected.Standing with { DoneAnyway = verdict.DoneAnyway(answer) }, verdict.Objections)
            : null;
    }

    /// <summary>Takes some lines out, puts some in, folds the rest anew; not when a later entry becomes impossible.</summary>
    private bool Keep(LogEntry stored, Guid[] without, (long Seq, LogEntry Entry, Listed<Objection> Judged)[] with)
    {
        var same = Untouched(without, with.Select(line => line.Entry.At));
        var rest = _standing[same..]
            .Where(line => !without.Contains(line.Entry.Id))
            .Select(line => (line.Seq, line.Entry, line.Judged))
            .Concat(with)
            .OrderBy(line => line.Entry.At)
            .ThenBy(line => line.Seq);
        var states = same is 0 ? [] : _standing[same - 1].After;
        List<Line> anew = [];
        foreach (var (seq, entry, judged) in rest)
        {
            if (Afterwards.Objections([(entry, Afterwards.Anew(entry, FloorOf(states, entry.Subjects), judged))]).Any())
            {
                return false;
            }

            states = After(states, entry);
            anew.Add(new(seq, entry, judged, states));
        }

        _standing.RemoveRange(same, _standing.Count - same);
        _standing.AddRange(anew);
        Log.Add((Log.Count + 1, stored));
        _seqs[stored.Id] = Log.Count;
        if (stored is Corrected corrected)
        {
            _corrects[stored.Id] = corrected.Entry;
        }

        return true;
    }

    /// <summary>How many lines at the beginning stay as they are.</summary>
    private int Untouched(Guid[] without, IEnumerable<DateTimeOffset> with)
    {
        var same = _standing.Count;
        var first = with.Append(DateTimeOffset.MaxValue).Min();
        while (same > 0 && _standing[same - 1].Entry.At >= first)
        {
            same--;
        }

        return without
            .Select(id => _standing.FindIndex(line => line.Entry.Id == id))
            .Where(at => at >= 0)
            .Append(same)
            .Min();
    }

    private ImmutableDictionary<Subject, State> Before(DateTimeOffset at) =>
        AfterAll(at) is var lines and > 0 ? _standing[lines - 1].After : [];

    /// <summary>How many lines are no later than that.</summary>
    private int AfterAll(DateTimeOffset at) => _standing.FindLastIndex(line => line.Entry.At <= at) + 1;

    private Guid FirstId(Guid id) => _corrects.GetValueOrDefault(id, id);

    private long SeqOf(Guid id) => _seqs[id];

    private Listed<Objection> JudgedAs(Guid id) => _standing.FirstOrDefault(line => line.Entry.Id == id).Judged;

    private static ImmutableDictionary<Subject, State> After(ImmutableDictionary<Subject, State> states, LogEntry entry)
    {
        var handed = entry.HandedOver(subject => StateOf(states, subject)).ToLookup(h => h.Taker, h => h.Handed);
        return states.SetItems(
            entry
                .Subjects.Distinct()
                .Select(s => KeyValuePair.Create(s, StateOf(states, s).After(entry, [.. handed[s]])))
        );
    }

    private static State StateOf(ImmutableDictionary<Subject, State> states, Subject subject) =>
        states.TryGetValue(subject, out var state) ? state
        : subject.Kind is SubjectKind.Tank ? new TankState(subject.Id)
        : subject.Kind is SubjectKind.Batch ? new BatchState(subject.Id)
        : subject.Kind is SubjectKind.Culture ? new CultureState(subject.Id)
        : new ItemState(subject.Id);

    private Floor FloorOf(ImmutableDictionary<Subject, State> states, IEnumerable<Subject> subjects)
    {
        var of = subjects.Distinct().ToLookup(s => s.Kind);
        return empty with
        {
            Tanks = [.. of[SubjectKind.Tank].Select(s => (_tanks[s.Id], (TankState)StateOf(states, s)))],
            Batches = [.. of[SubjectKind.Batch].Select(s => (_batches[s.Id], (BatchState)StateOf(states, s)))],
            Cultures = [.. of[SubjectKind.Culture].Select(s => (_cultures[s.Id], (CultureState)StateOf(states, s)))],
            Items = [.. of[SubjectKind.Item].Select(s => (_items[s.Id], (ItemState)StateOf(states, s)))],
        };
    }

    /// <summary>New batches, cultures and items come with the entry that brings them.</summary>
    private void Welcome(LogEntry entry)
    {
        if (entry is Filled { NewBatch: { } filled })
        {
            Welcome(filled);
        }
        else if (entry is FillPlanned { NewBatch: { } planned })
        {
            Welcome(planned);
        }
        else if (entry is BatchTakenOver { NewBatch: var found })
        {
            Welcome(found);
        }

        if (entry is ItemReceived { NewItem: { } kept })
        {
            _items.TryAdd(kept.Id, new(kept.Id, _items.Count + 1, kept.Name, kept.Kind, kept.Measure));
        }

        NewCulture[] cultures = entry switch
        {
            CultureReceived received => [received.NewCulture],
            CultureTakenOver takenOver => [takenOver.NewCulture],
            Harvested harvested => [.. harvested.Cuts.Select(cut => cut.NewCulture)],
            _ => [],
        };
        foreach (var it in cultures)
        {
            _cultures.TryAdd(
                it.Id,
                new(it.Id, _cultures.Count + 1, it.Strain, it.Kind) { UseBy = it.UseBy, IsMixed = it.IsMixed }
            );
        }
    }

    private void Welcome(NewBatch it) =>
        _batches.TryAdd(
            it.Id,
            new(it.Id, _batches.Count + 1, it.Name, it.Style, it.Kind)
            {
                LimitOfAttenuation = it.LimitOfAttenuation,
                HarvestPlanned = it.HarvestPlanned,
                CarbonDioxideWanted = it.CarbonDioxideWanted,
            }
        );
}
