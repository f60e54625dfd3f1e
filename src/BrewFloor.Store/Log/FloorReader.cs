using BrewFloor.Domain;
using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Log;
using BrewFloor.Store.House;
using BrewFloor.Store.Jobs;
using Npgsql;

namespace BrewFloor.Store.Log;

/// <summary>What pages ask of the floor. Reads only, nothing here locks; one round trip each.</summary>
public sealed class FloorReader(NpgsqlDataSource database, RulesOnHand rules)
{
    private const string None = "false";

    // By the tanks' own states: however many batches came and went, it looks at as many rows as there are tanks.
    private const string InTanks = """
        t.id IN (
            SELECT unnest(ARRAY[(h.state -> 'contents' ->> 'batch_id')::uuid, (h.state -> 'planned' ->> 'batch_id')::uuid])
            FROM tanks k JOIN states h ON h.subject_id = k.id)
        """;

    // One whose entries were all struck is not: what is left are the marks.
    private const string WasLogged = """
        EXISTS (
            SELECT FROM entry_subjects m JOIN entries e ON e.id = m.entry_id
            WHERE m.subject_id = t.id AND m.until IS NULL AND e.kind NOT IN ('corrected', 'struck')
        )
        """;

    private const string CulturesNewestFirst = $"{WasLogged} ORDER BY t.number DESC";

    private const string ItemsByName = $"{WasLogged} ORDER BY lower(t.thing ->> 'name'), t.number";

    private static readonly Wanted WholeFloor = new("NOT t.is_retired", InTanks, None, "true");

    /// <summary>Every tank in the house, the beer in them, and every open job.</summary>
    public Task<FloorView> FloorAsync(CancellationToken stop) => ViewAsync(WholeFloor, stop);

    /// <summary>The statements of <see cref="FloorAsync"/>, for whoever measures what the rest of it costs.</summary>
    internal void AskFloor(NpgsqlBatch batch) => Ask(batch, WholeFloor, []);

    /// <summary>Every tank, retired ones too.</summary>
    public Task<FloorView> InventoryAsync(CancellationToken stop) => ViewAsync(new("true", None, None, None), stop);

    /// <summary>A tank, the beer in it or planned for it, the cultures of that beer, and what is due on either.</summary>
    /// <returns>Null: no tank has this code (without case).</returns>
    public async Task<FloorView?> TankAsync(string code, CancellationToken stop)
    {
        const string Batch = """
            SELECT unnest(ARRAY[(s.state -> 'contents' ->> 'batch_id')::uuid, (s.state -> 'planned' ->> 'batch_id')::uuid])
            FROM tanks k JOIN states s ON s.subject_id = k.id WHERE k.code = upper($1)
            """;
        var view = await ViewAsync(
            new(
                "t.code = upper($1)",
                $"t.id IN ({Batch})",
                None,
                $"subject_id IN (SELECT id FROM tanks WHERE code = upper($1)) OR subject_id IN ({Batch})"
            ),
            stop,
            code
        );
        return view.Floor.Tanks is [] ? null : view;
    }

    /// <summary>A batch, its tanks, the cultures pitched into it and harvested from it, and what is due on any of them.</summary>
    /// <returns>Null: there is no such batch.</returns>
    public async Task<FloorView?> BatchAsync(int number, CancellationToken stop)
    {
        const string Kin = """
            SELECT o.subject_id FROM batches b JOIN entry_subjects m ON m.subject_id = b.id AND m.until IS NULL
            JOIN entry_subjects o ON o.entry_id = m.entry_id AND o.until IS NULL WHERE b.number = $1
            """;
        var view = await ViewAsync(
            new($"t.id IN ({Kin})", "t.number = $1", $"t.id IN ({Kin})", $"subject_id IN ({Kin})"),
            stop,
            number
        );
        return view.Floor.Batches is [] ? null : view;
    }

    /// <summary>Batches that are over and began with the strain that this one began with: the last fifty, the newest first.</summary>
    public async Task<Listed<(Batch Thing, BatchState State)>> EarlierOfStrainAsync(int number, CancellationToken stop)
    {
        var view = await ViewAsync(
            new(
                None,
                """
                t.number <> $1 AND (s.state ->> 'packaged' IS NOT NULL OR s.state ->> 'closed' IS NOT NULL)
                AND (t.id, s.state #>> '{pitches,0,culture_id}') IN (
                    SELECT (into_it ->> 'batch_id')::uuid, like_it.id::text
                    FROM batches b JOIN states o ON o.subject_id = b.id
                    JOIN cultures own ON own.id = (o.state #>> '{pitches,0,culture_id}')::uuid
                    JOIN cultures like_it ON lower(like_it.thing ->> 'strain') = lower(own.thing ->> 'strain')
                    JOIN states y ON y.subject_id = like_it.id
                    CROSS JOIN jsonb_array_elements(y.state -> 'pitched_into') into_it
                    WHERE b.number = $1)
                ORDER BY t.number DESC LIMIT 50
                """,
                None,
                None
            ),
            stop,
            number
        );
        return view.Floor.Batches;
    }

    /// <summary>Batches that anything was ever logged about, the newest first.</summary>
    /// <param name="before">The number to continue below.</param>
    public Task<FloorView> BatchesAsync(int? before, int limit, CancellationToken stop) =>
        ViewAsync(
            new(
                "t.id IN (SELECT tank_id FROM tank_occupancies WHERE upper_inf(during))",
                $"t.number < $1 AND {WasLogged} ORDER BY t.number DESC LIMIT {limit}",
                None,
                None
            ),
            stop,
            before ?? int.MaxValue
        );

    /// <summary>Every culture that was ever logged, the newest first, and what is due on them.</summary>
    public Task<FloorView> CulturesAsync(CancellationToken stop) =>
        ViewAsync(new(None, None, CulturesNewestFirst, "subject_kind = 'culture'"), stop);

    /// <summary>All that a form can choose from a shelf: every culture and everything in stock.</summary>
    public Task<FloorView> ShelvesAsync(CancellationToken stop) =>
        ViewAsync(new(None, None, CulturesNewestFirst, None) { Items = ItemsByName }, stop);

    /// <summary>A culture, the batches it went into and came from, and what is due on it.</summary>
    /// <returns>Null: there is no such culture.</returns>
    public async Task<FloorView?> CultureAsync(Guid id, CancellationToken stop)
    {
        const string Kin = """
            SELECT o.subject_id FROM entry_subjects m
            JOIN entry_subjects o ON o.entry_id = m.entry_id AND o.until IS NULL WHERE m.subject_id = $1 AND m.until IS NULL
            """;
        var view = await ViewAsync(
            new($"t.id IN ({Kin})", $"t.id IN ({Kin})", $"t.id = $1 OR t.id IN ({Kin})", "subject_id = $1"),
            stop,
            id
        );
        return view.Floor.Cultures.Any(c => c.Thing.Id == id) ? view : null;
    }

    /// <summary>Everything in stock that was ever logged, by name, and what is due on it.</summary>
    public Task<FloorView> ItemsAsync(CancellationToken stop) =>
        ViewAsync(new(None, None, None, "subject_kind = 'item'") { Items = ItemsByName }, stop);

    /// <summary>An item, and what is due on it.</summary>
    /// <returns>Null: there is no such item.</returns>
    public async Task<FloorView?> ItemAsync(int number, CancellationToken stop)
    {
        var view = await ViewAsync(
            new(None, None, None, "subject_id IN (SELECT id FROM items WHERE number = $1)") { Items = "t.number = $1" },
            stop,
            number
        );
        return view.Floor.Items is [] ? null : view;
    }

    /// <summary>Every open job, with the tanks, batches, cultures and items that it is about.</summary>
    public Task<FloorView> JobsAsync(CancellationToken stop)
    {
        const string Open = "SELECT unnest(ARRAY[subject_id, tank_id]) FROM jobs WHERE resolved_at IS NULL";
        const string There = $"t.id IN ({Open})";
        return ViewAsync(new(There, There, There, "true") { Items = There }, stop);
    }

    /// <summary>Just these, for a form that asks the same question as the door will.</summary>
    public Task<FloorView> ForAsync(IEnumerable<Subject> subjects, CancellationToken stop)
    {
        Guid[] ids = [.. subjects.Select(s => s.Id)];
        const string These = "t.id = ANY($1)";
        return ViewAsync(new(These, These, These, "subject_id = ANY($1)") { Items = These }, stop, ids);
    }

    /// <summary>A subject as it was just after a moment.</summary>
    /// <param name="at">The moment, inclusive.</param>
    /// <param name="known">As we knew it then; null: as we know it now.</param>
    public async Task<AsItWas> AsItWasAsync(
        Subject subject,
        DateTimeOffset at,
        DateTimeOffset? known,
        CancellationToken stop
    )
    {
        await using var connection = await database.OpenConnectionAsync(stop);
        var seq = known is { } moment ? await SeqAtAsync(connection, moment, stop) : Timelines.Today;
        var to = Times.Cut(at);
        var just = to.AddTicks(TimeSpan.TicksPerMicrosecond);
        var timelines = await Timelines.ReadAsync(connection, [subject], just, to, seq, stop);
        return new(timelines.Before[subject], to, known);
    }

    private static async Task<long> SeqAtAsync(
        NpgsqlConnection connection,
        DateTimeOffset known,
        CancellationToken stop
    )
    {
        await using var batch = connection.CreateBatch();
        batch.Add(
            "SELECT seq FROM entries WHERE recorded <= $1 ORDER BY recorded DESC, seq DESC LIMIT 1",
            Times.Cut(known)
        );
        return await batch.ExecuteScalarAsync(stop) is long seq ? seq : 0;
    }

    private async Task<FloorView> ViewAsync(Wanted wanted, CancellationToken stop, params object[] values)
    {
        await using var connection = await database.OpenConnectionAsync(stop);
        await using var batch = connection.CreateBatch();
        Ask(batch, wanted, values);
        await using var reader = await batch.ExecuteReaderAsync(stop);
        await reader.ReadAsync(stop);
        var opened = new Opened { Recorded = reader.At(0) };
        await reader.NextResultAsync(stop);
        await reader.ReadAsync(stop);
        opened.Rules = rules.Read(reader);
        List<Subject> order = [];
        foreach (var (kind, _) in SubjectKinds.InLockOrder)
        {
            await reader.NextResultAsync(stop);
            await Opening.ReadThingsAsync(opened, kind, reader, stop, order);
        }

        await reader.NextResultAsync(stop);
        while (await reader.ReadAsync(stop))
        {
            opened.Jobs.Add(OpenJob.Read(reader));
        }

        var states = opened.Kept.ToDictionary(k => k.Key, k => k.Value.State);
        return new(opened.Recorded, opened.Things.Floor(opened.Rules, states, order), [.. opened.Jobs]);
    }

    private void Ask(NpgsqlBatch batch, Wanted wanted, object[] values)
    {
        batch.Add("SELECT clock_timestamp()");
        batch.Add(RulesOnHand.Question, rules.Version);
        var parts = new[]
        {
            ("tanks", wanted.Tanks),
            ("batches", wanted.Batches),
            ("cultures", wanted.Cultures),
            ("items", wanted.Items),
        };
        foreach (var (table, where) in parts)
        {
            Add(batch, Opening.Question(table).Replace("t.id = ANY($1)", where, StringComparison.Ordinal), values);
        }

        Add(
            batch,
            $"{OpenJob.Columns} WHERE resolved_at IS NULL AND ({wanted.Jobs}) ORDER BY overdue_at, due_at",
            values
        );
    }

    private static void Add(NpgsqlBatch batch, string text, object[] values) =>
        batch.Add(text, text.Contains("$1", StringComparison.Ordinal) ? values : []);

    /// <summary>Which of each, as SQL; the one parameter is $1.</summary>
    private sealed record Wanted(string Tanks, string Batches, string Cultures, string Jobs)
    {
        public string Items { get; init; } = None;
    }
}
