namespace BrewFloor.Store.PrivateServer;

/// <summary>The programs that dump a database and fill one from a dump.</summary>
internal static class DumpPrograms
{
    /// <exception cref="PrivateServerProblem">None, or older than the server.</exception>
    public static async Task<PostgresPrograms> ForAsync(BorrowedDatabase database, CancellationToken stop)
    {
        await using var connection = Connections.Alone(database.Connections.Owner);
        await connection.OpenAsync(stop);
        var server = connection.PostgreSqlVersion.Major;
        var programs = await PostgresPrograms.FindAsync(database.Options, "pg_dump", dataOf: null, stop);
        return programs.Major >= server ? programs : throw BackupProblems.ProgramsOlder(server, programs.Major);
    }

    /// <summary>What a program gave as its reason.</summary>
    public static string Reason(Ran ran) =>
        ran.Errors.Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).FirstOrDefault()
        ?? $"it ended with {ran.Code}.";
}
