using System.Collections.Immutable;
using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Items;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Domain.Tests.Log;
using BrewFloor.Domain.Yeast;
using BrewFloor.Store.Log;
using BrewFloor.Store.Tests.Postgres;
using Npgsql;
using static BrewFloor.Store.Tests.Postgres.FreshFloor;

namespace BrewFloor.Store.Tests.Log;

/// <summary>A floor at random, played through the door.</summary>
internal sealed class RandomLog(FreshFloor floor, int seed)
{
    private Dictionary<Guid, (Tank Thing, TankState State)> _tanks = [];
    private readonly Dictionary<Guid, (Batch Thing, BatchState State)> _batches = [];
    private readonly Dictionary<Guid, (Culture Thing, CultureState State)> _cultures = [];
    private readonly Dictionary<Guid, (Item Thing, ItemState State)> _items = [];
    private DateTimeOffset _latest;

    public RandomFloor Random { get; } = new(seed);

    public int Tried { get; private set; }

    public int BackDated { get; private set; }

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async Task PlayAsync(Func<RandomLog, bool> enough)
    {
        foreach (var (tank, _) in Random.Empty.Tanks)
        {
            await floor.Inventory.AddAsync(tank, Ann, Stop);
        }

        _tanks = Random.Empty.Tanks.ToDictionary(t => t.Thing.Id);
        while (!enough(this))
        {
            Tried++;
            var entry = Random.Next(Now);
            if (await SendAsync(entry))
            {
                await LookAsync(entry.Subjects);
            }
        }
    }

    /// <summary>The floor a brewer sees: tanks, the beer in them or planned for them, yeast that is left, the stock.</summary>
    private Floor Now
    {
        get
        {
            var near = _tanks.Values.SelectMany(t => (Guid?[])[t.State.BatchId, t.State.Planned?.BatchId]).ToHashSet();
            return Random.Empty with
            {
                Tanks = [.. _tanks.Values],
                Batches = [.. _batches.Values.Where(b => near.Contains(b.Thing.Id))],
                Cultures = [.. _cultures.Values.Where(c => c.State.IsUsable)],
                Items = [.. _items.Values],
            };
        }
    }

    private async Task LookAsync(IEnumerable<Subject> subjects)
    {
        var seen = (await floor.Reader.ForAsync(subjects, Stop)).Floor;
        seen.Tanks.ToList().ForEach(t => _tanks[t.Thing.Id] = t);
        seen.Batches.ToList().ForEach(b => _batches[b.Thing.Id] = b);
        seen.Cultures.ToList().ForEach(c => _cultures[c.Thing.Id] = c);
        seen.Items.ToList().ForEach(i => _items[i.Thing.Id] = i);
    }

    private async Task<bool> SendAsync(LogEntry entry)
    {
        var appended = await floor.SendAsync(entry);
        if (appended is Appended.Refused { Entries: [var judged] })
        {
            Sent insisted = new(entry, RandomFloor.AnswerTo(judged.Verdict));
            appended = await floor.Log.AppendAsync(new([insisted], Ann), Stop);
        }

        if (appended is not Appended.Stored)
        {
            return false;
        }

        BackDated += entry.At < _latest ? 1 : 0;
        _latest = entry.At > _latest ? entry.At : _latest;
        Random.WasStored(entry);
        return true;
    }

    /// <summary>The whole log as stored, folded from nothing: by the domain's own words, not by the door's.</summary>
    public async Task<ImmutableDictionary<Subject, State>> FoldedAsync() =>
        PlayedFloor.Fold(AsItStands.Of(await LinesAsync()));

    /// <summary>The whole log as stored.</summary>
    public async Task<IReadOnlyList<(long Seq, LogEntry Entry)>> LinesAsync()
    {
        await using var connection = await floor.Database.OpenConnectionAsync(Stop);
        await using var batch = connection.CreateBatch();
        batch.Add("SELECT seq, at, id, kind, version, payload, note, done_by, done_anyway FROM entries ORDER BY seq");
        await using var reader = await batch.ExecuteReaderAsync(Stop);
        List<(long, LogEntry)> log = [];
        while (await reader.ReadAsync(Stop))
        {
            log.Add(Line(reader));
        }

        return log;
    }

    private static (long, LogEntry) Line(NpgsqlDataReader reader)
    {
        var entry = EntryJson.Read(reader.GetString(3), reader.GetInt32(4), reader.GetString(5)) with
        {
            Id = reader.GetGuid(2),
            At = reader.At(1),
            Note = reader.TextOrNull(6),
            DoneAnyway = [.. reader.GetFieldValue<string[]>(8)],
        };
        return (
            reader.GetInt64(0),
            entry is Corrected c ? c with { Replacement = c.Replacement with { DoneAnyway = c.DoneAnyway } } : entry
        );
    }

    /// <summary>The states as the door keeps them.</summary>
    public async Task<Dictionary<Subject, string>> KeptAsync()
    {
        await using var connection = await floor.Database.OpenConnectionAsync(Stop);
        await using var batch = connection.CreateBatch();
        batch.Add("SELECT kind, subject_id, state FROM states WHERE entries > 0");
        await using var reader = await batch.ExecuteReaderAsync(Stop);
        var kept = new Dictionary<Subject, string>();
        while (await reader.ReadAsync(Stop))
        {
            var subject = new Subject(SubjectKinds.Of(reader.GetString(0)), reader.GetGuid(1));
            kept.Add(subject, FloorJson.Of(Things.ReadState(subject.Kind, reader.GetString(2))));
        }

        return kept;
    }
}
