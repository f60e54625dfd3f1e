using Npgsql;

namespace BrewFloor.Store.Backups;

/// <summary>What goes into an export, and what stays out of it and why. A table that is in neither list fails a test.</summary>
internal static class ExportedTables
{
    /// <summary>In an order in which each finds what it refers to.</summary>
    public static readonly string[] InOrder =
    [
        "people",
        "house_rules",
        "site",
        "entry_kinds",
        "tanks",
        "batches",
        "cultures",
        "items",
        "thing_changes",
        "entries",
        "entry_subjects",
        "handed_over",
        "seen_afterwards",
        "tank_occupancies",
        "jobs",
        "spreadsheets",
    ];

    /// <summary>Folded anew; keys that open doors; and what belongs to the place, not to the floor.</summary>
    public static readonly string[] LeftOut =
    [
        "states",
        "snapshots",
        "tokens",
        "sessions",
        "invites",
        "passkeys",
        "security_events",
        "data_protection_keys",
        "backups",
        "__EFMigrationsHistory",
    ];

    /// <summary>Columns that stay out, and what an import puts there: an export lies about unencrypted.</summary>
    public static readonly IReadOnlyDictionary<(string Table, string Column), string> Secrets = new Dictionary<
        (string, string),
        string
    >
    {
        [("people", "password_hash")] = "NULL",
        [("people", "security_stamp")] = "gen_random_uuid()",
    };

    private const string ColumnsOf = """
        SELECT attname FROM pg_attribute
        WHERE attrelid = to_regclass('public.' || quote_ident($1)) AND attnum > 0 AND NOT attisdropped AND attgenerated = ''
        ORDER BY attnum
        """;

    /// <summary>Those that go out; computed ones come by themselves. None: there is no such table.</summary>
    public static async Task<IReadOnlyList<string>> ColumnsAsync(
        NpgsqlConnection connection,
        string table,
        CancellationToken stop
    )
    {
        await using var command = new NpgsqlCommand(ColumnsOf, connection) { Parameters = { new() { Value = table } } };
        await using var reader = await command.ExecuteReaderAsync(stop);
        var columns = new List<string>();
        while (await reader.ReadAsync(stop))
        {
            if (!Secrets.ContainsKey((table, reader.GetString(0))))
            {
                columns.Add(reader.GetString(0));
            }
        }

        return columns;
    }

    /// <summary>The rows of a table as they go out.</summary>
    public static string Rows(string table, IEnumerable<string> columns) =>
        $"SELECT {Quoted(columns)} FROM public.{table}";

    public static string Quoted(IEnumerable<string> columns) => string.Join(", ", columns.Select(c => $"\"{c}\""));

    /// <summary>What of them is in an export, counted and hashed.</summary>
    public static async Task<Tally> TallyAsync(
        NpgsqlConnection connection,
        IEnumerable<string> tables,
        CancellationToken stop
    )
    {
        var rows = new List<(string, string)>();
        foreach (var table in tables)
        {
            // An older schema lacks the tables that came since.
            if (await ColumnsAsync(connection, table, stop) is { Count: > 0 } columns)
            {
                rows.Add((table, Rows(table, columns)));
            }
        }

        return await Tally.CountAsync(connection, rows, stop);
    }
}
