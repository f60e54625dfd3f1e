using BrewFloor.Store.PrivateServer;
using Npgsql;

namespace BrewFloor.Store.Backups;

/// <summary>A database that nobody has anything in: no tables, or those of a floor that has neither people nor a log yet.</summary>
internal static class EmptyPlace
{
    // A floor nobody owns yet: the app was started once, and made its tables.
    private static readonly string[] Owned = ["people", "tokens", "entries", "tanks", "batches", "cultures"];

    private const int Looks = 20;

    private static readonly TimeSpan BetweenLooks = TimeSpan.FromMilliseconds(100);

    private const string Tables = """
        SELECT count(*) FROM pg_class c JOIN pg_namespace n ON n.oid = c.relnamespace
        WHERE c.relkind IN ('r', 'p', 'v', 'm', 'S') AND n.nspname !~ '^pg_' AND n.nspname <> 'information_schema'
        """;

    private const string Others = """
        SELECT count(*) FROM pg_stat_activity
        WHERE datname = current_database() AND pid <> pg_backend_pid() AND backend_type = 'client backend'
        """;

    // The schema itself stays, with who may use it; so does an extension that a superuser put there.
    private const string Clear = """
        DO $$ DECLARE name text; BEGIN
            FOR name IN SELECT oid::regclass::text FROM pg_class WHERE relnamespace = 'public'::regnamespace AND relkind IN ('r', 'p') LOOP
                EXECUTE 'DROP TABLE IF EXISTS ' || name || ' CASCADE';
            END LOOP;
            FOR name IN SELECT oid::regclass::text FROM pg_class WHERE relnamespace = 'public'::regnamespace AND relkind = 'S' LOOP
                EXECUTE 'DROP SEQUENCE ' || name || ' CASCADE';
            END LOOP;
            FOR name IN SELECT oid::regprocedure::text FROM pg_proc p WHERE pronamespace = 'public'::regnamespace
                    AND NOT EXISTS (SELECT FROM pg_depend d WHERE d.objid = p.oid AND d.deptype = 'e') LOOP
                EXECUTE 'DROP ROUTINE ' || name || ' CASCADE';
            END LOOP;
        END $$
        """;

    /// <exception cref="PrivateServerProblem">Something is there.</exception>
    public static async Task DemandAsync(string owner, CancellationToken stop)
    {
        await using var connection = Connections.Alone(owner);
        await connection.OpenAsync(stop);
        if (
            await AskAsync<long>(connection, Tables, stop) is > 0 and var tables
            && !await IsFreshAsync(connection, stop)
        )
        {
            throw BackupProblems.NotEmpty(tables);
        }
    }

    /// <summary>The app would go on with what it read before. The server lists a closed connection for a moment longer.</summary>
    /// <exception cref="PrivateServerProblem">Somebody else uses the database, and still does after two seconds.</exception>
    public static async Task DemandAloneAsync(string owner, CancellationToken stop)
    {
        await using var connection = Connections.Alone(owner);
        await connection.OpenAsync(stop);
        for (var looks = 0; await AskAsync<long>(connection, Others, stop) > 0; looks++)
        {
            if (looks == Looks)
            {
                throw BackupProblems.InUse();
            }

            await Task.Delay(BetweenLooks, stop);
        }
    }

    /// <summary>Takes away the tables of an empty floor, or of a restore that failed.</summary>
    public static async Task ClearAsync(string owner, CancellationToken stop)
    {
        await using var connection = Connections.Alone(owner);
        await connection.OpenAsync(stop);
        await using var command = new NpgsqlCommand(Clear, connection);
        await command.ExecuteNonQueryAsync(stop);
    }

    private static async Task<bool> IsFreshAsync(NpgsqlConnection connection, CancellationToken stop)
    {
        foreach (var table in Owned)
        {
            if (
                await AskAsync<bool>(connection, $"SELECT to_regclass('public.{table}') IS NULL", stop)
                || await AskAsync<bool>(connection, $"SELECT EXISTS (SELECT FROM public.{table})", stop)
            )
            {
                return false;
            }
        }

        return true;
    }

    private static async Task<T> AskAsync<T>(NpgsqlConnection connection, string question, CancellationToken stop)
    {
        await using var command = new NpgsqlCommand(question, connection);
        return (T)(await command.ExecuteScalarAsync(stop))!;
    }
}
