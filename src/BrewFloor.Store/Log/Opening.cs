using BrewFloor.Domain.House;
using BrewFloor.Domain.Log;
using BrewFloor.Store.Batches;
using BrewFloor.Store.House;
using BrewFloor.Store.Items;
using BrewFloor.Store.Jobs;
using BrewFloor.Store.Tanks;
using BrewFloor.Store.Yeast;
using Npgsql;

namespace BrewFloor.Store.Log;

/// <summary>A subject's stored state.</summary>
internal sealed record Kept(State State, int Entries, DateTimeOffset LastAt, int FoldVersion);

/// <summary>What an id already stands for.</summary>
internal sealed record FirstOutcome(byte[] Hash, long Seq, DateTimeOffset At)
{
    public static FirstOutcome Read(NpgsqlDataReader reader) =>
        new(reader.GetFieldValue<byte[]>(1), reader.GetInt64(2), reader.At(3));
}

/// <summary>Everything a request is judged by, read once its subjects are locked.</summary>
internal sealed class Opened
{
    public DateTimeOffset Recorded { get; set; }

    public HouseRules Rules { get; set; } = null!;

    public Things Things { get; } = new();

    public Dictionary<Subject, Kept> Kept { get; } = [];

    public Dictionary<Guid, FirstOutcome> Known { get; } = [];

    public List<OpenJob> Jobs { get; } = [];

    /// <summary>Of those that the request says did it.</summary>
    public HashSet<Guid> People { get; } = [];

    public Targets Targets { get; set; } = new(new Dictionary<Guid, Target>());
}

/// <summary>What a request needs to know.</summary>
internal sealed record Sought(IReadOnlyCollection<Subject> Subjects)
{
    /// <summary>Ids of the request's entries.</summary>
    public Guid[] Entries { get; init; } = [];

    /// <summary>Ids of entries it names.</summary>
    public Guid[] Named { get; init; } = [];

    /// <summary>Ids of people it names.</summary>
    public Guid[] People { get; init; } = [];
}

/// <summary>Locks the subjects and reads them: one round trip, in which every statement sees what the one before waited for.</summary>
internal static class Opening
{
    /// <summary>What the tanks are that hold a batch's beer, though nothing is said about them: its jobs depend on it.</summary>
    private const string TanksOfBatches = """
        SELECT id, 0, version, thing FROM tanks
        WHERE id IN (SELECT tank_id FROM tank_occupancies WHERE batch_id = ANY($1) AND upper_inf(during))
        """;

    public static async Task<Opened> ReadAsync(
        NpgsqlConnection connection,
        Sought sought,
        RulesOnHand rules,
        Locks locks,
        CancellationToken stop
    )
    {
        await using var batch = connection.CreateBatch();
        var kinds = Ask(batch, sought, rules, locks);
        await using var reader = await batch.ExecuteReaderAsync(stop);
        for (var skipped = locks.Rows.Length > 0 ? kinds.Length : 0; skipped > 0; skipped--)
        {
            await reader.NextResultAsync(stop); // the locks' rows
        }

        return await ReadAsync(reader, kinds, sought, rules, stop);
    }

    /// <returns>The kinds whose rows are locked and read.</returns>
    internal static SubjectKind[] Ask(NpgsqlBatch batch, Sought sought, RulesOnHand rules, Locks locks)
    {
        var kinds = SubjectKinds
            .InLockOrder.Select(k => (k.Kind, k.Table, Ids: Ids(sought.Subjects, k.Kind)))
            .Where(k => k.Ids.Length > 0)
            .ToArray();
        Lock(batch, kinds.Select(k => (k.Table, k.Ids)), locks);

        batch.Add(locks.Clock);
        batch.Add(RulesOnHand.Question, rules.Version);
        batch.Add(OpenJob.Question, sought.Subjects.Select(s => s.Id).ToArray());
        foreach (var (_, table, ids) in kinds)
        {
            batch.Add(Question(table), ids);
        }

        if (Ids(sought.Subjects, SubjectKind.Batch) is [_, ..] batches)
        {
            batch.Add(TanksOfBatches, batches);
        }

        // After the things: what the same request brought a moment ago is then never seen without its entry.
        batch.Add("SELECT id, hash, seq, at FROM entries WHERE id = ANY($1)", sought.Entries);
        if (sought.Named.Length > 0)
        {
            batch.Add(Target.Question, sought.Named);
        }

        if (sought.People.Length > 0)
        {
            batch.Add("SELECT id FROM people WHERE id = ANY($1)", sought.People);
        }

        return [.. kinds.Select(k => k.Kind)];
    }

    /// <summary>Always tanks, batches, cultures, items.</summary>
    public static void Lock(NpgsqlBatch batch, IEnumerable<(string Table, Guid[] Ids)> kinds, Locks locks)
    {
        if (locks.Rows.Length == 0)
        {
            return;
        }

        batch.Add(locks.Limit);
        foreach (var (table, ids) in kinds)
        {
            batch.Add($"SELECT 1 FROM {table} WHERE id = ANY($1) {locks.Rows}", ids);
        }
    }

    public static Guid[] Ids(IEnumerable<Subject> subjects, SubjectKind kind) =>
        [.. subjects.Where(s => s.Kind == kind).Select(s => s.Id).Distinct().Order()];

    private static async Task<Opened> ReadAsync(
        NpgsqlDataReader reader,
        SubjectKind[] kinds,
        Sought sought,
        RulesOnHand rules,
        CancellationToken stop
    )
    {
        var opened = new Opened();
        await reader.ReadAsync(stop);
        opened.Recorded = Times.Cut(reader.At(0));

        await reader.NextResultAsync(stop);
        await reader.ReadAsync(stop);
        opened.Rules = rules.Read(reader);

        await reader.NextResultAsync(stop);
        while (await reader.ReadAsync(stop))
        {
            opened.Jobs.Add(OpenJob.Read(reader));
        }

        foreach (var kind in kinds)
        {
            await reader.NextResultAsync(stop);
            await ReadThingsAsync(opened, kind, reader, stop);
        }

        if (kinds.Contains(SubjectKind.Batch))
        {
            await ReadTanksOfBatchesAsync(opened, reader, stop);
        }

        await reader.NextResultAsync(stop);
        while (await reader.ReadAsync(stop))
        {
            opened.Known.Add(reader.GetGuid(0), FirstOutcome.Read(reader));
        }

        await ReadNamedAsync(opened, sought, reader, stop);
        return opened;
    }

    private static async Task ReadTanksOfBatchesAsync(Opened opened, NpgsqlDataReader reader, CancellationToken stop)
    {
        await reader.NextResultAsync(stop);
        while (await reader.ReadAsync(stop))
        {
            AddThing(opened.Things, SubjectKind.Tank, reader);
        }
    }

    private static async Task ReadNamedAsync(
        Opened opened,
        Sought sought,
        NpgsqlDataReader reader,
        CancellationToken stop
    )
    {
        if (sought.Named.Length > 0)
        {
            await reader.NextResultAsync(stop);
            opened.Targets = new(await Target.ReadAsync(reader, stop));
        }

        if (sought.People.Length > 0)
        {
            await reader.NextResultAsync(stop);
            while (await reader.ReadAsync(stop))
            {
                opened.People.Add(reader.GetGuid(0));
            }
        }
    }

    /// <summary>Things of one kind with their states.</summary>
    public static string Question(string table) =>
        $"""
            SELECT t.id, {(
                table is "tanks" ? "0" : "t.number"
            )}, t.version, t.thing, s.state, s.entries, s.last_at, s.fold_version
            FROM {table} t LEFT JOIN states s ON s.subject_id = t.id WHERE t.id = ANY($1)
            """;

    public static async Task ReadThingsAsync(
        Opened opened,
        SubjectKind kind,
        NpgsqlDataReader reader,
        CancellationToken stop,
        List<Subject>? order = null
    )
    {
        while (await reader.ReadAsync(stop))
        {
            var subject = new Subject(kind, reader.GetGuid(0));
            order?.Add(subject);
            AddThing(opened.Things, kind, reader);
            if (reader.TextOrNull(4) is { } state)
            {
                opened.Kept.Add(
                    subject,
                    new(Things.ReadState(kind, state), reader.GetInt32(5), reader.At(6), reader.GetInt32(7))
                );
            }
        }
    }

    public static void AddThing(Things things, SubjectKind kind, NpgsqlDataReader reader)
    {
        var (number, version, thing) = (reader.GetInt32(1), reader.GetInt32(2), reader.GetString(3));
        switch (kind)
        {
            case SubjectKind.Tank:
                things.Add(TankRow.ToTank(thing, version));
                break;
            case SubjectKind.Batch:
                things.Add(BatchRow.ToBatch(thing, number, version));
                break;
            case SubjectKind.Culture:
                things.Add(CultureRow.ToCulture(thing, number, version));
                break;
            default:
                things.Add(ItemRow.ToItem(thing, number, version));
                break;
        }
    }
}
