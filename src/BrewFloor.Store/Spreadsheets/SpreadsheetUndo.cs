using BrewFloor.Domain;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.People;
using BrewFloor.Store.Log;
using Npgsql;

namespace BrewFloor.Store.Spreadsheets;

/// <summary>Something that stands upon what an import brought.</summary>
/// <param name="Entry">An entry of the log; null: the thing itself was edited.</param>
/// <param name="Kind">Of the entry; <c>edited</c> without one.</param>
/// <param name="Subject">Which of the things.</param>
/// <param name="Called">Its code or number.</param>
public sealed record StandsUpon(Guid? Entry, string Kind, DateTimeOffset At, SubjectKind Subject, string Called);

/// <summary>What became of an undo.</summary>
public abstract record Undone
{
    private Undone() { }

    /// <param name="Again">It was undone before.</param>
    public sealed record Done(bool Again) : Undone;

    /// <summary>Other work stands upon it: the first of that, and how much there is.</summary>
    public sealed record Stands(Listed<StandsUpon> First, int Count) : Undone;

    public sealed record Refused(Listed<Objection> Objections) : Undone;

    /// <summary>There is no such import.</summary>
    public sealed record Unknown : Undone;
}

/// <summary>Takes an import back as a whole: its entries are struck, its tanks go, and either all of that happens or nothing.</summary>
public sealed class SpreadsheetUndo(NpgsqlDataSource database, FloorLog log)
{
    private const int MostNamed = 5;

    // A strike undoes something and adds nothing; a correction of one of our own entries is work of somebody.
    private const string Standing = """
        WITH brought AS (
            SELECT t.id, 'tank' AS kind, t.code AS called FROM tanks t WHERE t.id = ANY($1)
            UNION ALL SELECT b.id, 'batch', b.number::text FROM batches b WHERE b.id = ANY($1)
            UNION ALL SELECT c.id, 'culture', c.number::text FROM cultures c WHERE c.id = ANY($1)
        ), upon AS (
            SELECT DISTINCT ON (e.id) e.id, e.kind, m.at, b.kind AS subject, b.called
            FROM brought b JOIN entry_subjects m ON m.subject_id = b.id AND m.until IS NULL
            JOIN entries e ON e.id = m.words_id
            WHERE e.id <> ALL($2) AND e.kind <> 'struck'
            UNION ALL
            SELECT NULL, 'edited', c.at, b.kind, b.called
            FROM brought b JOIN thing_changes c ON c.thing_id = b.id AND c.kind = b.kind AND c.at > $3
        )
        SELECT *, count(*) OVER () FROM upon ORDER BY at, called LIMIT $4
        """;

    private const string Ours = """
        SELECT DISTINCT entry_id FROM entry_subjects WHERE entry_id = ANY($1) AND until IS NULL
        """;

    /// <param name="strike">The id of the entry that strikes, made by whoever asks.</param>
    /// <param name="reason">Why; kept with the strike.</param>
    public async Task<Undone> UndoAsync(Guid sheet, Guid strike, string reason, Author by, CancellationToken stop)
    {
        if (ThingEdit.MayNot(by) is [_, ..] objections)
        {
            return new Undone.Refused(objections);
        }

        if (await ReadAsync(sheet, stop) is not var (import, entries) || import.ImportedAt is not { } since)
        {
            return new Undone.Unknown();
        }

        Undone said = new Undone.Done(Again: true);
        var beside = new Beside
        {
            Subjects = [.. import.Tanks.Select(Subject.Tank)],
            WriteAsync = async (connection, opened, cancelled) =>
            {
                if (!await ClaimAsync(connection, sheet, by, cancelled))
                {
                    return false;
                }

                if (await UponAsync(connection, import, since, cancelled) is { Count: > 0 } stands)
                {
                    said = stands;
                    return false;
                }

                await TakeAwayAsync(connection, opened, import.Tanks, by, cancelled);
                return true;
            },
        };
        LogEntry[] struck = entries is [] ? [] : [new Struck(entries, reason) { Id = strike }];
        var request = new LogRequest([.. struck.Select(entry => new Sent(entry, Answer.None))], by);
        return await log.AppendAsync(request, beside, stop) switch
        {
            Appended.Stored => new Undone.Done(Again: false),
            Appended.Refused(var judged) => new Undone.Refused([.. judged.SelectMany(j => j.Verdict.Objections)]),
            _ => said,
        };
    }

    /// <summary>Of its entries those that still stand: what somebody struck since needs no second strike.</summary>
    private async Task<(Spreadsheet Import, Listed<Guid> Entries)?> ReadAsync(Guid sheet, CancellationToken stop)
    {
        await using var connection = await database.OpenConnectionAsync(stop);
        if (await SpreadsheetBook.FindAsync(connection, sheet, DateTimeOffset.MaxValue, stop) is not { } import)
        {
            return null;
        }

        await using var batch = connection.CreateBatch();
        object ours = import.Entries.ToArray();
        batch.Add(Ours, ours);
        await using var reader = await batch.ExecuteReaderAsync(stop);
        var entries = new List<Guid>();
        while (await reader.ReadAsync(stop))
        {
            entries.Add(reader.GetGuid(0));
        }

        return (import, [.. entries]);
    }

    private static async Task<bool> ClaimAsync(
        NpgsqlConnection connection,
        Guid sheet,
        Author by,
        CancellationToken stop
    )
    {
        await using var batch = connection.CreateBatch();
        batch.Add(
            """
            UPDATE spreadsheets SET undone_at = clock_timestamp(), undone_by = $2
            WHERE id = $1 AND imported_at IS NOT NULL AND undone_at IS NULL
            """,
            sheet,
            by.Id
        );
        return await batch.ExecuteNonQueryAsync(stop) == 1;
    }

    private static async Task<Undone.Stands> UponAsync(
        NpgsqlConnection connection,
        Spreadsheet import,
        DateTimeOffset since,
        CancellationToken stop
    )
    {
        await using var batch = connection.CreateBatch();
        object brought = import.Tanks.Concat(import.Others).ToArray();
        batch.Add(Standing, brought, import.Entries.ToArray(), since, MostNamed);
        await using var reader = await batch.ExecuteReaderAsync(stop);
        var (first, count) = (new List<StandsUpon>(), 0);
        while (await reader.ReadAsync(stop))
        {
            var subject = SubjectKinds.Of(reader.GetString(3));
            first.Add(new(reader.OrNull<Guid>(0), reader.GetString(1), reader.At(2), subject, reader.GetString(4)));
            count = (int)reader.GetInt64(5);
        }

        return new([.. first], count);
    }

    // Never deleted: the struck entries are about them. Under its code such a tank may come again (TakenBack).
    private static async Task TakeAwayAsync(
        NpgsqlConnection connection,
        Log.Opened opened,
        Listed<Guid> tanks,
        Author by,
        CancellationToken stop
    )
    {
        if (tanks is [])
        {
            return;
        }

        var subjects = tanks.Select(Subject.Tank);
        var there = opened.Things.Floor(opened.Rules, new Dictionary<Subject, State>(), subjects);
        await using var batch = connection.CreateBatch();
        foreach (var (tank, _) in there.Tanks.Where(t => !t.Thing.IsRetired))
        {
            var gone = tank with { Version = tank.Version + 1, RetiredOn = opened.Rules.DateOf(opened.Recorded) };
            opened.Things.Add(gone);
            ThingEdit.Store(batch, Subject.Tank(gone.Id), gone.Version, by, FloorJson.Of(gone));
        }

        await batch.ExecuteNonQueryAsync(stop);
    }
}
