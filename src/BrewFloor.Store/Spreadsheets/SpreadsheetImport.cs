using BrewFloor.Domain;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.People;
using BrewFloor.Domain.Tanks;
using BrewFloor.Store.Log;
using BrewFloor.Store.Tanks;
using Npgsql;

namespace BrewFloor.Store.Spreadsheets;

/// <summary>What the rows of a spreadsheet bring: all of it, or nothing.</summary>
/// <param name="Tanks">That join the inventory. One with a version above 1 was taken back and comes again.</param>
/// <param name="Entries">About them, or bringing batches and cultures.</param>
public sealed record Brought(Listed<Tank> Tanks, Listed<LogEntry> Entries);

/// <summary>What became of an import.</summary>
public abstract record Imported
{
    private Imported() { }

    /// <param name="Again">It was imported before: this is the first outcome once more.</param>
    public sealed record Done(bool Again) : Imported;

    /// <summary>What the floor says to entries, by their ids.</summary>
    public sealed record Refused(Listed<Judged> Entries) : Imported;

    /// <summary>What speaks against a tank, or against who asks.</summary>
    public sealed record NotAdded(Listed<Objection> Objections) : Imported;

    /// <summary>The floor is no longer as it was looked at: a code is taken, or an id stands for something else.</summary>
    public sealed record Overtaken : Imported;
}

/// <summary>Brings the rows of a spreadsheet through the one way in, in one transaction.</summary>
public sealed class SpreadsheetImport(NpgsqlDataSource database, FloorLog log)
{
    private const string Claim = """
        UPDATE spreadsheets SET imported_at = clock_timestamp(), imported_by = $2 WHERE id = $1 AND imported_at IS NULL
        """;

    // Once its things are written: what happens to them later is later than this.
    private const string Note = """
        UPDATE spreadsheets SET imported_at = clock_timestamp(), entries = $2, tanks = $3, others = $4 WHERE id = $1
        """;

    /// <summary>Tanks that an undone import had added and that may come again, by code.</summary>
    public async Task<IReadOnlyDictionary<string, (Guid Id, int Version)>> TakenBackAsync(CancellationToken stop)
    {
        await using var connection = await database.OpenConnectionAsync(stop);
        return await TakenBack.ReadAsync(connection, stop);
    }

    /// <summary>What the floor would say, with nothing stored: by the same guards as the import itself.</summary>
    public async Task<Imported> CheckAsync(Brought brought, Author by, CancellationToken stop)
    {
        if (Against(brought, by) is { } objections)
        {
            return objections;
        }

        var heard = await log.CheckAsync(Request(brought, by), Beside.Seen(brought.Tanks), stop);
        return heard.Conflict is not null ? new Imported.Overtaken()
            : heard.Judged.All(judged => judged.Verdict.Allows(Answer.None)) ? new Imported.Done(Again: false)
            : new Imported.Refused([.. heard.Judged.Where(judged => !judged.Verdict.Allows(Answer.None))]);
    }

    /// <summary>All of it, once: whoever sends the same spreadsheet a second time gets the first outcome.</summary>
    public async Task<Imported> ImportAsync(Guid sheet, Brought brought, Author by, CancellationToken stop)
    {
        if (Against(brought, by) is { } objections)
        {
            return objections;
        }

        Imported said = new Imported.Overtaken();
        var beside = new Beside
        {
            Tanks = brought.Tanks,
            WriteAsync = async (connection, _, cancelled) =>
            {
                if (await ClaimAsync(connection, sheet, by, cancelled))
                {
                    return await WriteAsync(connection, sheet, brought, by, cancelled);
                }

                said = await IsImportedAsync(connection, sheet, cancelled)
                    ? new Imported.Done(Again: true)
                    : new Imported.Overtaken();
                return false;
            },
        };
        try
        {
            return await log.AppendAsync(Request(brought, by), beside, stop) switch
            {
                Appended.Stored => new Imported.Done(Again: false),
                Appended.Refused(var judged) => new Imported.Refused(judged),
                _ => said,
            };
        }
        catch (PostgresException e) when (e.ConstraintName is "ix_tanks_code" or "pk_tanks")
        {
            return new Imported.Overtaken(); // somebody added that tank a moment ago
        }
    }

    private static Imported.NotAdded? Against(Brought brought, Author by)
    {
        Listed<Objection> objections =
        [
            .. ThingEdit.MayNot(by).Concat(brought.Tanks.SelectMany(tank => TankEdits.New(tank, by.Role))),
        ];
        return objections is [] ? null : new(objections);
    }

    private static LogRequest Request(Brought brought, Author by) =>
        new([.. brought.Entries.Select(entry => new Sent(entry, Answer.None))], by);

    private static async Task<bool> ClaimAsync(
        NpgsqlConnection connection,
        Guid sheet,
        Author by,
        CancellationToken stop
    )
    {
        await using var batch = connection.CreateBatch();
        batch.Add(Claim, sheet, by.Id);
        return await batch.ExecuteNonQueryAsync(stop) == 1;
    }

    private static async Task<bool> IsImportedAsync(NpgsqlConnection connection, Guid sheet, CancellationToken stop)
    {
        await using var batch = connection.CreateBatch();
        batch.Add("SELECT imported_at IS NOT NULL FROM spreadsheets WHERE id = $1", sheet);
        return await batch.ExecuteScalarAsync(stop) is true;
    }

    private static async Task<bool> WriteAsync(
        NpgsqlConnection connection,
        Guid sheet,
        Brought brought,
        Author by,
        CancellationToken stop
    )
    {
        foreach (var again in brought.Tanks.Where(tank => tank.Version > 1))
        {
            if (!await TakenBack.RenewAsync(connection, again, stop))
            {
                return false;
            }
        }

        await using var batch = connection.CreateBatch();
        foreach (var tank in brought.Tanks)
        {
            var thing = FloorJson.Of(tank);
            if (tank.Version == 1)
            {
                batch.Add(Inventory.Joins, tank.Id, tank.Code, Statements.Jsonb(thing));
            }

            ThingEdit.Record(batch, Subject.Tank(tank.Id), tank.Version, by, thing);
        }

        batch.Add(
            Note,
            sheet,
            brought.Entries.Select(entry => entry.Id).ToArray(),
            brought.Tanks.Select(tank => tank.Id).ToArray(),
            brought.Entries.SelectMany(Newcomers.Of).Select(subject => subject.Id).Distinct().ToArray()
        );
        await batch.ExecuteNonQueryAsync(stop);
        return true;
    }
}
