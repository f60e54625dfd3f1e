using BrewFloor.Domain;
using BrewFloor.Domain.House;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;

namespace BrewFloor.Store.Log;

/// <summary>The timelines from some moment on, told twice: as they stood, and as they stand with the request in them. Pure.</summary>
/// <remarks>
/// A subject whose timeline changes is touched: each of its later entries is judged in both tellings and folded anew. What such
/// an entry hands over touches the taker too; an unchanged value stops the walk. Everybody else's states only run along.
/// </remarks>
/// <param name="from">The states just before the first step, of everybody who is locked.</param>
/// <param name="counts">How many entries stand on each timeline before the first step.</param>
internal sealed class Replay(
    HouseRules rules,
    Things things,
    IReadOnlyDictionary<Subject, State> from,
    IReadOnlyDictionary<Subject, int> counts
)
{
    private readonly Dictionary<Subject, State> _was = new(from);
    private readonly Dictionary<Subject, State> _now = new(from);
    private readonly Dictionary<Subject, int> _counts = new(counts);
    private readonly HashSet<Subject> _touched = [];
    private readonly HashSet<Subject> _missing = [];

    public IReadOnlyDictionary<Subject, State> States => _now;

    public IReadOnlyDictionary<Subject, int> Counts => _counts;

    public IReadOnlySet<Subject> Touched => _touched;

    /// <summary>Whom the walk reached without holding their lock: nothing else here counts then.</summary>
    public IReadOnlySet<Subject> Missing => _missing;

    public List<Judged> Verdicts { get; } = [];

    /// <summary>Later entries that hear something new, and the request's entry that did it.</summary>
    public List<(Guid By, LogEntry Later, Listed<Objection> Anew)> HeardAnew { get; } = [];

    /// <summary>Entries whose handed-over values are new or other than before.</summary>
    public List<(Guid EntryId, Listed<Handed> Values)> HandedAnew { get; } = [];

    public List<(Guid TankId, DateTimeOffset At, Guid? Batch)> Occupied { get; } = [];

    public List<(Subject Subject, Line At, int Entries, State State)> Snapshots { get; } = [];

    public void Run(IEnumerable<Step> steps)
    {
        Guid? cause = null;
        foreach (var step in steps)
        {
            cause = step.Cause ?? cause;
            if (step.Cause is not null)
            {
                Touch(step.Was);
                Touch(step.Now);
            }

            var isTouched = Concerns(step.Was) || Concerns(step.Now);
            if (isTouched && LacksSomebody(step))
            {
                continue;
            }

            if (step is { Was: not null, Now: not null, Asked: null } && isTouched && cause is { } by)
            {
                Compare(step.Was, step.Now, by);
            }

            Apply(step, isTouched);
        }
    }

    private void Touch(Line? line) => _touched.UnionWith(line?.Entry.Subjects ?? []);

    private bool Concerns(Line? line) => line is not null && line.Entry.Subjects.Any(_touched.Contains);

    private bool LacksSomebody(Step step)
    {
        var subjects = new[] { step.Was, step.Now }.SelectMany(line => line?.Entry.Subjects ?? []);
        var missing = subjects.Where(subject => !_now.ContainsKey(subject)).ToArray();
        _missing.UnionWith(missing);
        return missing.Length > 0;
    }

    // Judged twice, so that what today's things and house rules would say anyway is not taken for news.
    private void Compare(Line was, Line now, Guid by)
    {
        Listed<Objection> before = [.. was.Entry.Objections(things.Floor(rules, _was, was.Entry.Subjects))];
        Keep(by, now.Entry, Afterwards.Anew(now.Entry, things.Floor(rules, _now, now.Entry.Subjects), before));
    }

    private void Keep(Guid by, LogEntry later, Listed<Objection> anew)
    {
        if (anew is not [])
        {
            HeardAnew.Add((by, later, anew));
        }
    }

    private void Apply(Step step, bool isTouched)
    {
        if (step.Was is { } was)
        {
            Fold(_was, was, was.Handed);
        }

        if (step.Now is not { } now)
        {
            return;
        }

        if (step.Asked is { } asked)
        {
            now = Judge(asked, now);
        }
        else if (step.Was is null && step.Cause is { } by)
        {
            Restore(now, by);
        }

        var handed = isTouched ? HandedBy(now) : now.Handed;
        var tanks = now.Entry.Subjects.Select(s => _now.GetValueOrDefault(s)).OfType<TankState>().ToArray();
        Fold(_now, now, handed);
        Count(now);
        foreach (var tank in tanks)
        {
            var after = ((TankState)_now[tank.Subject]).BatchId;
            if (after != tank.BatchId)
            {
                Occupied.Add((tank.Id, now.Entry.At, after));
            }
        }
    }

    private Line Judge(Sent asked, Line now)
    {
        var floor = things.Floor(rules, _now, asked.Entry.Subjects);
        var verdict = asked.Entry.JudgedOn(floor);
        if (asked.Entry is Corrected corrected)
        {
            var standing = corrected.StandingJudgedOn(floor);
            verdict = standing with { Objections = [.. verdict.Objections.Union(standing.Objections)] };
        }

        Verdicts.Add(new(asked.Entry.Id, verdict));
        return now with { Entry = now.Entry with { DoneAnyway = verdict.DoneAnyway(asked.Answer) } };
    }

    // What a struck correction had replaced stands again: it was judged when it was written, so only the impossible counts.
    private void Restore(Line now, Guid by)
    {
        var anew = Afterwards.Anew(now.Entry, things.Floor(rules, _now, now.Entry.Subjects), []);
        Keep(by, now.Entry, anew.Without(o => o.Level is not Level.Impossible));
    }

    private Listed<Handed> HandedBy(Line line)
    {
        Listed<Handed> handed =
        [
            .. line.Entry.HandedOver(s => _now.GetValueOrDefault(s)).Select(h => new Handed(h.Taker, h.Handed)),
        ];
        if (handed.Count != line.Handed.Count || handed.Zip(line.Handed).Any(pair => !pair.First.IsSameAs(pair.Second)))
        {
            HandedAnew.Add((line.Entry.Id, handed));
            _touched.UnionWith(handed.Concat(line.Handed).Select(h => h.Taker));
        }

        return handed;
    }

    private static void Fold(Dictionary<Subject, State> states, Line line, Listed<Handed> handed)
    {
        foreach (var subject in line.Entry.Subjects.Distinct())
        {
            if (states.TryGetValue(subject, out var state))
            {
                states[subject] = line.After(state, handed);
            }
        }
    }

    private void Count(Line line)
    {
        foreach (var subject in line.Entry.Subjects.Distinct().Where(_now.ContainsKey))
        {
            _counts[subject] = _counts.GetValueOrDefault(subject) + 1;
            if (_counts[subject] % SnapshotRow.Every == 0)
            {
                Snapshots.Add((subject, line, _counts[subject], _now[subject]));
            }
        }
    }
}
