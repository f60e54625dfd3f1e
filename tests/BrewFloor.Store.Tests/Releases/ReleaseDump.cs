using System.Text;
using BrewFloor.Store.PrivateServer;
using Npgsql;

namespace BrewFloor.Store.Tests.Releases;

/// <summary>A floor as one release left it: plain SQL that any PostgreSQL from 15 on takes.</summary>
internal static class ReleaseDump
{
    private const string EndOfRows = @"\.";

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    /// <summary>The whole database, without what only some versions of PostgreSQL know, and without owners and grants.</summary>
    public static async Task WriteAsync(string connection, string file)
    {
        var programs = await PostgresPrograms.FindAsync(
            PrivateServerOptions.FromEnvironment("none"),
            "pg_dump",
            dataOf: null,
            Stop
        );
        string[] arguments = ["--no-password", "--no-owner", "--no-privileges", "--no-comments"];
        var environment = LibpqEnvironment.Of(connection);
        var ran = await Account.Own.RunAsync(programs["pg_dump"], arguments, Stop, environment: environment);
        Assert.True(ran.IsDone, ran.Errors);
        await File.WriteAllLinesAsync(file, Plain(ran.Output), Stop);
    }

    /// <summary>Into an empty database.</summary>
    public static async Task RestoreAsync(string connection, string file)
    {
        await using var database = NpgsqlDataSource.Create(
            new NpgsqlConnectionStringBuilder(connection) { Pooling = false }.ConnectionString
        );
        await using var into = await database.OpenConnectionAsync(Stop);
        var statements = new StringBuilder();
        using var lines = (await File.ReadAllLinesAsync(file, Stop)).AsEnumerable().GetEnumerator();
        while (lines.MoveNext())
        {
            var line = lines.Current;
            if (!line.StartsWith("COPY ", StringComparison.Ordinal))
            {
                statements.Append(line).Append('\n');
                continue;
            }

            await into.DoAsync(statements.ToString());
            statements.Clear();
            await CopyAsync(into, line, lines);
        }

        await into.DoAsync(statements.ToString());
    }

    private static async Task CopyAsync(NpgsqlConnection into, string statement, IEnumerator<string> lines)
    {
        await using var rows = await into.BeginTextImportAsync(statement, Stop);
        while (lines.MoveNext() && !string.Equals(lines.Current, EndOfRows, StringComparison.Ordinal))
        {
            await rows.WriteAsync(lines.Current + "\n");
        }
    }

    private static async Task DoAsync(this NpgsqlConnection connection, string statements)
    {
        if (statements.Length == 0)
        {
            return; // rows of one table follow those of another
        }

        await using var command = new NpgsqlCommand(statements, connection);
        await command.ExecuteNonQueryAsync(Stop);
    }

    // Settings of newer versions, psql's own commands, and remarks.
    private static IEnumerable<string> Plain(string dump) =>
        dump.Split('\n')
            .Where(line =>
                line.Length > 0
                && !line.StartsWith("--", StringComparison.Ordinal)
                && !line.StartsWith("SET transaction_timeout", StringComparison.Ordinal)
                && !line.StartsWith(@"\restrict", StringComparison.Ordinal)
                && !line.StartsWith(@"\unrestrict", StringComparison.Ordinal)
            );
}
