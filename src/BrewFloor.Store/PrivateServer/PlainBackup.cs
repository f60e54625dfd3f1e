using Npgsql;

namespace BrewFloor.Store.PrivateServer;

/// <summary>The whole database in one file, unencrypted, and back into an empty place.</summary>
public sealed class PlainBackup(DatabaseAddress address)
{
    private const UnixFileMode OnlyOwner = UnixFileMode.UserRead | UnixFileMode.UserWrite;

    /// <summary>Writes a new file, also while the app runs; it has its name only once it is whole, on the disk and was read back.</summary>
    /// <exception cref="PrivateServerProblem">No backup was made: why, and what to do.</exception>
    public async Task BackupAsync(string file, CancellationToken stop)
    {
        file = Path.GetFullPath(file);
        if (File.Exists(file) || Directory.Exists(file))
        {
            throw BackupProblems.FileExists(file);
        }

        if (address is DatabaseAddress.InFolder(var options) && new DataFolder(options.Folder).MadeBy() is null)
        {
            throw ServerProblems.NothingThere(options.Folder);
        }

        await using var database = await BorrowedDatabase.FromAsync(address, stop);
        var part = MakePart(file);
        try
        {
            await DumpAsync(database, part, stop);
            await Account.Own.MustRunAsync("sync", [part], stop);
            File.Move(part, file, overwrite: false);
            await Account.Own.MustRunAsync("sync", [Path.GetDirectoryName(file)!], stop);
        }
        finally
        {
            File.Delete(part);
        }
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
        var programs = await ProgramsAsync(database, stop);
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

    // Nobody else may read it: it holds the club's people and what they sign in with.
    private static string MakePart(string file)
    {
        var part = file + ".part";
        try
        {
            File.Delete(part);
            new FileStream(
                part,
                new FileStreamOptions
                {
                    Mode = FileMode.CreateNew,
                    Access = FileAccess.Write,
                    UnixCreateMode = OnlyOwner,
                }
            ).Dispose();
            return part;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw BackupProblems.FileNotWritable(file, e.Message);
        }
    }

    private static async Task DumpAsync(BorrowedDatabase database, string part, CancellationToken stop)
    {
        var programs = await ProgramsAsync(database, stop);
        var connection = LibpqEnvironment.Of(database.Connections.Owner);
        string[] arguments = ["--format=custom", "--no-password", "--file", part];
        var ran = await Account.Own.RunAsync(programs["pg_dump"], arguments, stop, environment: connection);
        if (!ran.IsDone)
        {
            throw BackupProblems.Failed("backup", part, Reason(ran));
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
            throw BackupProblems.Failed("restore", file, Reason(ran));
        }
    }

    // The list alone would not notice that the end is missing, so all of it is read.
    private static async Task DemandReadableAsync(PostgresPrograms programs, string file, CancellationToken stop)
    {
        var ran = await Account.Own.RunAsync(programs["pg_restore"], ["--file", "/dev/null", file], stop);
        if (!ran.IsDone)
        {
            throw BackupProblems.Unreadable(file, Reason(ran));
        }
    }

    private static async Task<PostgresPrograms> ProgramsAsync(BorrowedDatabase database, CancellationToken stop)
    {
        await using var connection = Connections.Alone(database.Connections.Owner);
        await connection.OpenAsync(stop);
        var server = connection.PostgreSqlVersion.Major;
        var programs = await PostgresPrograms.FindAsync(database.Options, "pg_dump", dataOf: null, stop);
        return programs.Major >= server ? programs : throw BackupProblems.ProgramsOlder(server, programs.Major);
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

    private static string Reason(Ran ran) =>
        ran.Errors.Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).FirstOrDefault()
        ?? $"it ended with {ran.Code}.";
}
