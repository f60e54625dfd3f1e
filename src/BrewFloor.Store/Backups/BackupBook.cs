using BrewFloor.Store.Log;
using BrewFloor.Store.PrivateServer;
using Npgsql;

namespace BrewFloor.Store.Backups;

/// <summary>A backup that was made, or tried, as the book has it.</summary>
/// <param name="At">The moment it holds; when it was tried, if none was made.</param>
/// <param name="Bytes">None: it was not made.</param>
/// <param name="ProvenAt">When it had been restored beside and was the same.</param>
/// <param name="Problem">A code: why it was not made, or not proven.</param>
/// <param name="IsNightly">By itself at its hour.</param>
public sealed record BackupNote(
    DateTimeOffset At,
    string File,
    long? Bytes,
    DateTimeOffset? ProvenAt,
    string? Problem,
    bool IsNightly
)
{
    public Guid Id { get; init; } = Guid.CreateVersion7();

    public bool IsMade => Bytes is not null;

    public bool IsProven => ProvenAt is not null;
}

/// <summary>Which backups there are, and which of them were proven: the same for every instance of the app.</summary>
public sealed class BackupBook(NpgsqlDataSource database)
{
    private const long OneAtATime = 1114793337; // any number that no other advisory lock of ours uses
    private const int DaysOfFailures = 30;

    private const string Columns = "id, at, file, bytes, proven_at, problem, is_nightly";

    public Task WriteAsync(BackupNote note, CancellationToken stop) => WriteAsync(database, note, stop);

    /// <summary>The newest that was made; <see langword="null"/>: none yet.</summary>
    public async Task<BackupNote?> LastMadeAsync(CancellationToken stop) =>
        await ReadAsync("bytes IS NOT NULL ORDER BY at DESC LIMIT 1", stop) is [var last] ? last : null;

    /// <summary>The newest that was proven.</summary>
    public async Task<BackupNote?> LastProvenAsync(CancellationToken stop) =>
        await ReadAsync("proven_at IS NOT NULL ORDER BY at DESC LIMIT 1", stop) is [var last] ? last : null;

    /// <summary>Those made or tried by themselves, the newest first.</summary>
    public Task<IReadOnlyList<BackupNote>> NightlyAsync(CancellationToken stop) =>
        ReadAsync("is_nightly ORDER BY at DESC LIMIT 1000", stop);

    /// <summary>Its file is gone.</summary>
    public async Task StrikeOutAsync(BackupNote note, CancellationToken stop)
    {
        await using var connection = await database.OpenConnectionAsync(stop);
        await connection.DoAsync("DELETE FROM backups WHERE id = $1", stop, note.Id);
    }

    /// <summary>Of several instances of the app one backs up.</summary>
    /// <returns>Held until it is disposed; <see langword="null"/>: another one is at it.</returns>
    public async Task<IAsyncDisposable?> TakeTurnAsync(CancellationToken stop)
    {
        var connection = await database.OpenConnectionAsync(stop);
        await using var batch = connection.CreateBatch();
        batch.Add("SELECT pg_try_advisory_lock($1)", OneAtATime);
        if (await batch.ExecuteScalarAsync(stop) is true)
        {
            return new Turn(connection);
        }

        await connection.DisposeAsync();
        return null;
    }

    /// <summary>From the console, where the tables may be older than this program: then it is not written down.</summary>
    public static async Task WriteAsync(DatabaseAddress address, BackupNote note, CancellationToken stop)
    {
        await using var borrowed = await BorrowedDatabase.FromAsync(address, stop);
        await using var owner = NpgsqlDataSource.Create(
            new NpgsqlConnectionStringBuilder(borrowed.Connections.Owner) { Pooling = false }.ConnectionString
        );
        try
        {
            await WriteAsync(owner, note, stop);
        }
        catch (PostgresException e) when (e.SqlState is PostgresErrorCodes.UndefinedTable)
        {
            // It was backed up before an upgrade: the file is what counts.
        }
    }

    private static async Task WriteAsync(NpgsqlDataSource database, BackupNote note, CancellationToken stop)
    {
        await using var connection = await database.OpenConnectionAsync(stop);
        await using var batch = connection.CreateBatch();
        batch.Add(
            $"INSERT INTO backups ({Columns}) VALUES ($1, $2, $3, $4, $5, $6, $7)",
            note.Id,
            note.At.ToUniversalTime(),
            note.File,
            Statements.Long(note.Bytes),
            Statements.Instant(note.ProvenAt),
            Statements.Text(note.Problem),
            note.IsNightly
        );
        batch.Add(
            "DELETE FROM backups WHERE bytes IS NULL AND at < $1",
            note.At.ToUniversalTime().AddDays(-DaysOfFailures)
        );
        await batch.ExecuteNonQueryAsync(stop);
    }

    private async Task<IReadOnlyList<BackupNote>> ReadAsync(string which, CancellationToken stop)
    {
        await using var connection = await database.OpenConnectionAsync(stop);
        await using var batch = connection.CreateBatch();
        batch.Add($"SELECT {Columns} FROM backups WHERE {which}");
        await using var reader = await batch.ExecuteReaderAsync(stop);
        var notes = new List<BackupNote>();
        while (await reader.ReadAsync(stop))
        {
            notes.Add(
                new(
                    reader.At(1),
                    reader.GetString(2),
                    reader.OrNull<long>(3),
                    reader.OrNull<DateTimeOffset>(4),
                    reader.TextOrNull(5),
                    reader.GetBoolean(6)
                )
                {
                    Id = reader.GetGuid(0),
                }
            );
        }

        return notes;
    }

    // Back in the pool the connection would keep the lock.
    private sealed class Turn(NpgsqlConnection connection) : IAsyncDisposable
    {
        public async ValueTask DisposeAsync()
        {
            await using (connection)
            {
                await connection.DoAsync("SELECT pg_advisory_unlock($1)", CancellationToken.None, OneAtATime);
            }
        }
    }
}
