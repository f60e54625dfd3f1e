using BrewFloor.Store.Log;
using BrewFloor.Store.PrivateServer;
using Npgsql;

namespace BrewFloor.Store.People;

/// <summary>What happened to the doors of the house: written once, read by owners, forgotten after a time.</summary>
public sealed class SecurityBook(NpgsqlDataSource database)
{
    private const string Add =
        "INSERT INTO security_events (kind, by_id, about_id, detail, network) VALUES ($1, $2, $3, $4, $5)";

    private const string Page = """
        SELECT e.seq, e.at, e.kind, e.by_id, e.about_id, e.detail, e.network, by.name, about.name
        FROM security_events e
        LEFT JOIN people by ON by.id = e.by_id
        LEFT JOIN people about ON about.id = e.about_id
        WHERE ($1::bigint IS NULL OR e.seq < $1) AND ($2::uuid IS NULL OR e.by_id = $2 OR e.about_id = $2)
        ORDER BY e.seq DESC LIMIT $3
        """;

    public Task WriteAsync(SecurityEvent one, CancellationToken stop) => WriteAsync(database, one, stop);

    /// <summary>From the console, where the tables may be older than this program: then it is not written down.</summary>
    public static async Task WriteAsync(DatabaseAddress address, SecurityEvent one, CancellationToken stop)
    {
        await using var borrowed = await BorrowedDatabase.FromAsync(address, stop);
        await using var owner = Alone(borrowed.Connections.Owner);
        try
        {
            await WriteAsync(owner, one, stop);
        }
        catch (PostgresException e) when (e.SqlState is PostgresErrorCodes.UndefinedTable)
        {
            // A database from before there was such a book.
        }
    }

    /// <summary>The newest first.</summary>
    /// <param name="person">Only what they did, or what was done to them.</param>
    /// <param name="before">Of the page before.</param>
    public async Task<SecurityPageRead> ReadAsync(Guid? person, long? before, int limit, CancellationToken stop)
    {
        await using var connection = await database.OpenConnectionAsync(stop);
        await using var batch = connection.CreateBatch();
        batch.Add(Page, Statements.Long(before), Statements.Id(person), limit + 1);
        await using var reader = await batch.ExecuteReaderAsync(stop);
        var (notes, rows, last) = (new List<SecurityNote>(), 0, (long?)null);
        while (await reader.ReadAsync(stop) && ++rows <= limit)
        {
            last = reader.GetInt64(0);
            if (Enum.TryParse<SecurityKind>(reader.GetString(2), out var kind)) // a newer program wrote one this one doesn't know
            {
                notes.Add(NoteIn(reader, kind));
            }
        }

        return new([.. notes], rows > limit ? last : null);
    }

    /// <summary>As the owner of the tables: the app's own role may not.</summary>
    public static async Task<int> ForgetAsync(string owner, TimeSpan after, CancellationToken stop)
    {
        await using var database = Alone(owner);
        await using var command = database.CreateCommand("DELETE FROM security_events WHERE at < now() - $1");
        command.Parameters.Add(new() { Value = after });
        return await command.ExecuteNonQueryAsync(stop);
    }

    private static SecurityNote NoteIn(NpgsqlDataReader reader, SecurityKind kind) =>
        new(
            reader.GetInt64(0),
            reader.At(1),
            new(kind, reader.OrNull<Guid>(3), reader.OrNull<Guid>(4))
            {
                Detail = reader.TextOrNull(5),
                Network = reader.TextOrNull(6),
            },
            reader.TextOrNull(7),
            reader.TextOrNull(8)
        );

    private static NpgsqlDataSource Alone(string connection) =>
        NpgsqlDataSource.Create(new NpgsqlConnectionStringBuilder(connection) { Pooling = false }.ConnectionString);

    private static async Task WriteAsync(NpgsqlDataSource database, SecurityEvent one, CancellationToken stop)
    {
        await using var connection = await database.OpenConnectionAsync(stop);
        await connection.DoAsync(
            Add,
            stop,
            one.Kind.ToString(),
            Statements.Id(one.By),
            Statements.Id(one.About),
            Statements.Text(one.Detail),
            Statements.Text(one.Network)
        );
    }
}
