using BrewFloor.Domain;
using BrewFloor.Store.Log;
using Npgsql;

namespace BrewFloor.Store.Spreadsheets;

/// <summary>What the rows of a spreadsheet are.</summary>
public enum SheetKind
{
    Tanks,
    Batches,
    Cultures,
}

/// <summary>A file that somebody brought.</summary>
/// <param name="Name">Of the file.</param>
public sealed record Spreadsheet(Guid Id, SheetKind Kind, string Name, Guid UploadedBy, DateTimeOffset UploadedAt)
{
    /// <summary>What stood in it, as JSON; null: no longer kept.</summary>
    public string? Cells { get; init; }

    /// <summary>What each column means, as JSON; null: nobody said so yet.</summary>
    public string? Matching { get; init; }

    public DateTimeOffset? ImportedAt { get; init; }

    public Guid? ImportedBy { get; init; }

    public Listed<Guid> Entries { get; init; }

    public Listed<Guid> Tanks { get; init; }

    /// <summary>The batches or cultures it brought.</summary>
    public Listed<Guid> Others { get; init; }

    public DateTimeOffset? UndoneAt { get; init; }

    public Guid? UndoneBy { get; init; }

    public bool IsImported => ImportedAt is not null;

    public bool IsUndone => UndoneAt is not null;
}

/// <summary>The spreadsheets that were brought: their cells for a week, what became of them for good.</summary>
public sealed class SpreadsheetBook(NpgsqlDataSource database)
{
    /// <summary>As long as anybody needs to look twice; the file itself is still with whoever brought it.</summary>
    public static readonly TimeSpan Kept = TimeSpan.FromDays(7);

    /// <summary>Of one person, not yet imported: of more the oldest goes.</summary>
    public const int MostOpen = 10;

    private const int MostListed = 200;

    private const string Columns = """
        id, kind, name, uploaded_by, uploaded_at, matching, imported_at, imported_by, entries, tanks, others, undone_at, undone_by
        """;

    /// <summary>Keeps what stood in a file; what is older than it is kept goes.</summary>
    public async Task KeepAsync(Spreadsheet sheet, CancellationToken stop)
    {
        await using var connection = await database.OpenConnectionAsync(stop);
        await using var batch = connection.CreateBatch();
        Forget(batch, sheet.UploadedAt);
        batch.Add(
            """
            INSERT INTO spreadsheets (id, kind, name, uploaded_by, uploaded_at, cells, entries, tanks, others)
            VALUES ($1, $2, $3, $4, $5, $6, '{}', '{}', '{}')
            """,
            sheet.Id,
            NameOf(sheet.Kind),
            sheet.Name,
            sheet.UploadedBy,
            sheet.UploadedAt.ToUniversalTime(),
            Statements.Jsonb(sheet.Cells)
        );
        batch.Add(
            """
            DELETE FROM spreadsheets WHERE id IN (
                SELECT id FROM spreadsheets WHERE uploaded_by = $1 AND imported_at IS NULL
                ORDER BY uploaded_at DESC, id DESC OFFSET $2)
            """,
            sheet.UploadedBy,
            MostOpen
        );
        await batch.ExecuteNonQueryAsync(stop);
    }

    /// <param name="now">What is older than it is kept isn't there any more.</param>
    public async Task<Spreadsheet?> FindAsync(Guid id, DateTimeOffset now, CancellationToken stop)
    {
        await using var connection = await database.OpenConnectionAsync(stop);
        return await FindAsync(connection, id, now, stop);
    }

    /// <summary>What each column means, as somebody said. Of one that is imported it no longer changes.</summary>
    public async Task MatchAsync(Guid id, string matching, CancellationToken stop)
    {
        await using var connection = await database.OpenConnectionAsync(stop);
        await connection.DoAsync(
            "UPDATE spreadsheets SET matching = $2 WHERE id = $1 AND imported_at IS NULL",
            stop,
            id,
            Statements.Jsonb(matching)
        );
    }

    /// <summary>Those that were imported, and what this person has not imported yet; the newest first, without their cells.</summary>
    public async Task<Listed<Spreadsheet>> PastAsync(Guid person, DateTimeOffset now, CancellationToken stop)
    {
        await using var connection = await database.OpenConnectionAsync(stop);
        await using var batch = connection.CreateBatch();
        Forget(batch, now);
        batch.Add(
            $"""
            SELECT {Columns} FROM spreadsheets WHERE imported_at IS NOT NULL OR uploaded_by = $1
            ORDER BY uploaded_at DESC LIMIT {MostListed}
            """,
            person
        );
        await using var reader = await batch.ExecuteReaderAsync(stop);
        var sheets = new List<Spreadsheet>();
        while (await reader.ReadAsync(stop))
        {
            sheets.Add(Read(reader));
        }

        return [.. sheets];
    }

    internal static async Task<Spreadsheet?> FindAsync(
        NpgsqlConnection connection,
        Guid id,
        DateTimeOffset now,
        CancellationToken stop
    )
    {
        await using var batch = connection.CreateBatch();
        batch.Add($"SELECT {Columns}, cells FROM spreadsheets WHERE id = $1", id);
        await using var reader = await batch.ExecuteReaderAsync(stop);
        if (!await reader.ReadAsync(stop))
        {
            return null;
        }

        var sheet = Read(reader);
        var isKept = sheet.UploadedAt >= now - Kept;
        return isKept ? sheet with { Cells = reader.TextOrNull(13) }
            : sheet.IsImported ? sheet
            : null;
    }

    private static void Forget(NpgsqlBatch batch, DateTimeOffset now)
    {
        var before = now.ToUniversalTime() - Kept;
        batch.Add("DELETE FROM spreadsheets WHERE imported_at IS NULL AND uploaded_at < $1", before);
        batch.Add("UPDATE spreadsheets SET cells = NULL WHERE cells IS NOT NULL AND uploaded_at < $1", before);
    }

    private static Spreadsheet Read(NpgsqlDataReader reader) =>
        new(
            reader.GetGuid(0),
            Enum.Parse<SheetKind>(reader.GetString(1), ignoreCase: true),
            reader.GetString(2),
            reader.GetGuid(3),
            reader.At(4)
        )
        {
            Matching = reader.TextOrNull(5),
            ImportedAt = reader.OrNull<DateTimeOffset>(6),
            ImportedBy = reader.OrNull<Guid>(7),
            Entries = [.. reader.GetFieldValue<Guid[]>(8)],
            Tanks = [.. reader.GetFieldValue<Guid[]>(9)],
            Others = [.. reader.GetFieldValue<Guid[]>(10)],
            UndoneAt = reader.OrNull<DateTimeOffset>(11),
            UndoneBy = reader.OrNull<Guid>(12),
        };

    private static string NameOf(SheetKind kind) =>
        kind switch
        {
            SheetKind.Tanks => "tanks",
            SheetKind.Batches => "batches",
            _ => "cultures",
        };
}
