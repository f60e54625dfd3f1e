using Npgsql;

namespace BrewFloor.Store.PrivateServer;

/// <summary>The whole database in one file, unencrypted, and back into an empty place.</summary>
public sealed class PlainBackup(DatabaseAddress address)
{
    private static ReadOnlySpan<byte> Begins => "PGDMP"u8;

    /// <summary>Whether a file begins like one.</summary>
    public static async Task<bool> IsOneAsync(string file, CancellationToken stop)
    {
        if (!File.Exists(file))
        {
            return false;
        }

        await using var from = File.OpenRead(file);
        var begin = new byte[Begins.Length];
        return await from.ReadAtLeastAsync(begin, begin.Length, throwOnEndOfStream: false, stop) == begin.Length
            && begin.AsSpan().SequenceEqual(Begins);
    }

    /// <summary>Writes a new file, also while the app runs; it has its name only once it is whole, on the disk and was read back.</summary>
    /// <exception cref="PrivateServerProblem">No backup was made: why, and what to do.</exception>
    public async Task BackupAsync(string file, CancellationToken stop)
    {
        file = Path.GetFullPath(file);
        PartFile.DemandFree(file);
        if (address is DatabaseAddress.InFolder(var options) && new DataFolder(options.Folder).MadeBy() is null)
        {
            throw ServerProblems.NothingThere(options.Folder);
        }

        await using var database = await BorrowedDatabase.FromAsync(address, stop);
        using var part = PartFile.Make(file);
        await DumpAsync(database, part.Path, stop);
        await part.NameAsync(stop);
    }

    /// <summary>Fills an empty database from a file, wholly or not at all.</summary>
    /// <exception cref="PrivateServerProblem">Nothing was restored: why, and what to do.</exception>
    public async Task RestoreAsync(string file, CancellationToken stop)
    {
        file = Path.GetFullPath(file);
        if (!File.Exists(file))
        {
            throw BackupProblems.FileMissing(file);
        }

        await using var database = await BorrowedDatabase.FromAsync(address, stop);
        var programs = await DumpPrograms.ForAsync(database, stop);
        await DemandReadableAsync(programs, file, stop);
        if (await TablesAsync(database.Connections.Owner, stop) is > 0 and var tables)
        {
            throw BackupProblems.NotEmpty(tables);
        }

        if (address is DatabaseAddress.Given)
        {
            await ApplicationRole.EnsureAsync(database.Connections, stop); // the file grants to it
        }

        await FillAsync(database, programs, file, stop);
    }

    private static async Task DumpAsync(BorrowedDatabase database, string part, CancellationToken stop)
    {
        var programs = await DumpPrograms.ForAsync(database, stop);
        var connection = LibpqEnvironment.Of(database.Connections.Owner);
        string[] arguments = ["--format=custom", "--no-password", "--file", part];
        var ran = await Account.Own.RunAsync(programs["pg_dump"], arguments, stop, environment: connection);
        if (!ran.IsDone)
        {
            throw BackupProblems.Failed("backup", part, DumpPrograms.Reason(ran));
        }

        await DemandReadableAsync(programs, part, stop);
    }

    private static async Task FillAsync(
        BorrowedDatabase database,
        PostgresPrograms programs,
        string file,
        CancellationToken stop
    )
    {
        var connection = LibpqEnvironment.Of(database.Connections.Owner);
        string[] arguments =
        [
            "--dbname",
            connection["PGDATABASE"],
            "--no-password",
            "--no-owner", // the owner here may have another name
            "--single-transaction",
            "--exit-on-error",
            file,
        ];
        var ran = await Account.Own.RunAsync(programs["pg_restore"], arguments, stop, environment: connection);
        if (!ran.IsDone)
        {
            throw BackupProblems.Failed("restore", file, DumpPrograms.Reason(ran));
        }
    }

    // The list alone would not notice that the end is missing, so all of it is read.
    private static async Task DemandReadableAsync(PostgresPrograms programs, string file, CancellationToken stop)
    {
        var ran = await Account.Own.RunAsync(programs["pg_restore"], ["--file", "/dev/null", file], stop);
        if (!ran.IsDone)
        {
            throw BackupProblems.Unreadable(file, DumpPrograms.Reason(ran));
        }
    }

    private static async Task<long> TablesAsync(string owner, CancellationToken stop)
    {
        const string Tables = """
            SELECT count(*) FROM pg_class c JOIN pg_namespace n ON n.oid = c.relnamespace
            WHERE c.relkind IN ('r', 'p', 'v', 'm', 'S') AND n.nspname !~ '^pg_' AND n.nspname <> 'information_schema'
            """;
        await using var connection = Connections.Alone(owner);
        await connection.OpenAsync(stop);
        await using var command = new NpgsqlCommand(Tables, connection);
        return (long)(await command.ExecuteScalarAsync(stop))!;
    }
}
