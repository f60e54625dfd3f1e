using BrewFloor.Domain.Log;
using BrewFloor.Store.House;
using Npgsql;

namespace BrewFloor.Store.Log;

/// <summary>One request in one transaction, up to what the floor says to it.</summary>
internal sealed class Session
{
    private readonly NpgsqlConnection _connection;
    private readonly LogRequest _request;
    private readonly HashSet<Subject> _locked;
    private readonly HashSet<Subject> _also;
    private Hearing? _hearing;

    private Session(
        NpgsqlConnection connection,
        LogRequest request,
        HashSet<Subject> locked,
        HashSet<Subject> also,
        Opened opened
    ) => (_connection, _request, _locked, _also, Opened) = (connection, request, locked, also, opened);

    public Opened Opened { get; }

    public LogRequest Request => _request;

    public List<Heard> Entries => _hearing?.Entries ?? [];

    public Replay Replay { get; private set; } = null!;

    public Timelines? Timelines { get; private set; }

    public IReadOnlyList<Step> Steps { get; private set; } = [];

    public DateTimeOffset From => _hearing!.From;

    public bool IsLate => _hearing!.IsLate;

    /// <summary>An id of the request that already stands for something else.</summary>
    public Guid? Conflict { get; private set; }

    /// <param name="also">More subjects to lock; those found missing are added.</param>
    /// <returns>Null: the entries that the request names moved meanwhile; to be opened again.</returns>
    public static async Task<Session?> OpenAsync(
        NpgsqlConnection connection,
        LogRequest request,
        HashSet<Subject> also,
        RulesOnHand rules,
        Locks locks,
        CancellationToken stop
    )
    {
        Guid[] named = [.. request.Entries.SelectMany(s => Target.NamedBy(s.Entry)).Distinct()];
        if (named.Length > 0)
        {
            also.UnionWith(await NamedAsync(connection, request, named, stop));
        }

        HashSet<Subject> locked = [.. request.Entries.SelectMany(s => Hearing.Brings(s.Entry).Subjects), .. also];
        var sought = new Sought(locked)
        {
            Entries = [.. request.Entries.Select(s => s.Entry.Id)],
            Named = named,
            People = [.. request.Entries.SelectMany(s => Hearing.DoneBy(s.Entry)).Distinct()],
        };
        var opened = await Opening.ReadAsync(connection, sought, rules, locks, stop);
        var session = new Session(connection, request, locked, also, opened);
        session.Compare();
        var moved = request
            .Entries.SelectMany(s => opened.Targets.Filled(s.Entry).Subjects)
            .Where(s => !locked.Contains(s))
            .ToArray();
        also.UnionWith(moved);
        return moved.Length > 0 && session.Conflict is null ? null : session;
    }

    /// <summary>Tanks that come into being beside the entries are among the things they are judged by.</summary>
    public void Welcome(Beside? beside)
    {
        foreach (var tank in beside?.Tanks ?? [])
        {
            Opened.Things.Add(tank);
        }
    }

    /// <summary>Judges every entry that isn't in the log yet.</summary>
    /// <returns>False: it reached subjects that aren't locked; they are added to the set for the next time.</returns>
    public async Task<bool> HearAsync(CancellationToken stop)
    {
        var hearing = _hearing = new([.. New()], _request.Author, Opened);
        hearing.Place(timelines: null);
        IReadOnlyDictionary<Guid, LogEntry> words = new Dictionary<Guid, LogEntry>();
        if (hearing.IsLate)
        {
            Timelines = await Timelines.ReadAsync(
                _connection,
                _locked.Where(Opened.Things.Has).ToArray(),
                hearing.From,
                DateTimeOffset.MaxValue,
                Timelines.Today,
                stop
            );
            words = await RestoredAsync(stop);
            hearing.Place(Timelines);
        }

        hearing.Welcome();
        Steps = [.. hearing.Steps(Timelines, words)];
        Replay = new(Opened.Rules, Opened.Things, Before(), Counts());
        Replay.Run(Steps);
        if (Replay.Missing.Count > 0)
        {
            _also.UnionWith(Replay.Missing);
            return false;
        }

        Pronounce();
        return true;
    }

    public StoredEntry Outcome(Guid id, IReadOnlyDictionary<Guid, (long Seq, DateTimeOffset At)> written) =>
        Opened.Known.TryGetValue(id, out var first)
            ? new(id, first.Seq, first.At, Again: true)
            : new(id, written[id].Seq, written[id].At, Again: false);

    private static async Task<IEnumerable<Subject>> NamedAsync(
        NpgsqlConnection connection,
        LogRequest request,
        Guid[] named,
        CancellationToken stop
    )
    {
        await using var batch = connection.CreateBatch();
        batch.Add(Target.Question, named);
        await using var reader = await batch.ExecuteReaderAsync(stop);
        var targets = new Targets(await Target.ReadAsync(reader, stop));
        return [.. request.Entries.SelectMany(s => targets.Filled(s.Entry).Subjects)];
    }

    private void Compare()
    {
        var firsts = new Dictionary<Guid, byte[]>();
        foreach (var sent in _request.Entries)
        {
            var id = sent.Entry.Id;
            var hash = EntryJson.Hash(sent.Entry, _request.AuthorOf(sent));
            var isOther = Opened.Known.TryGetValue(id, out var known) && !known.Hash.AsSpan().SequenceEqual(hash);
            if (isOther || (!firsts.TryAdd(id, hash) && !firsts[id].AsSpan().SequenceEqual(hash)))
            {
                Conflict ??= id;
            }
        }
    }

    private IEnumerable<Sent> New() =>
        _request.Entries.Where(s => !Opened.Known.ContainsKey(s.Entry.Id)).DistinctBy(s => s.Entry.Id);

    private async Task<IReadOnlyDictionary<Guid, LogEntry>> RestoredAsync(CancellationToken stop)
    {
        Guid[] ids =
        [
            .. Entries
                .Where(e => !e.IsLost && e.Entry is Struck)
                .SelectMany(e => Target.NamedBy(e.Entry))
                .Select(id => Opened.Targets.Find(id)!)
                .Where(t => t.Corrects is not null)
                .SelectMany(t => Opened.Targets.Moving(t)!.ReplacedBy(t).Select(s => s.WordsId)),
        ];
        return ids.Length == 0 ? new Dictionary<Guid, LogEntry>() : await Timelines.WordsAsync(_connection, ids, stop);
    }

    private Dictionary<Subject, State> Before() =>
        _locked
            .Concat(Entries.SelectMany(e => Newcomers.Of(Hearing.Brings(e.Entry))))
            .Where(Opened.Things.Has)
            .Distinct()
            .ToDictionary(
                s => s,
                s =>
                    Timelines is not null
                        ? Timelines.Before.GetValueOrDefault(s) ?? Things.Blank(s)
                        : Opened.Kept.GetValueOrDefault(s)?.State ?? Things.Blank(s)
            );

    private Dictionary<Subject, int> Counts() =>
        Timelines is not null ? new(Timelines.Counts) : Opened.Kept.ToDictionary(k => k.Key, k => k.Value.Entries);

    private void Pronounce()
    {
        var judged = Replay.Verdicts.ToDictionary(v => v.Id, v => v.Verdict);
        foreach (var heard in Entries)
        {
            var floor = judged.GetValueOrDefault(heard.Entry.Id) ?? new Verdict(heard.Entry.Nature, [], []);
            var later = Afterwards.Objections(
                Replay.HeardAnew.Where(h => h.By == heard.Entry.Id).Select(h => (h.Later, h.Anew))
            );
            heard.Verdict = floor with { Objections = [.. heard.AtTheDoor.Concat(floor.Objections).Concat(later)] };
        }
    }
}
