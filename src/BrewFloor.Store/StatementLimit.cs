using System.Globalization;
using Npgsql;

namespace BrewFloor.Store;

/// <summary>How long one question to the database may take: whoever asks has gone long before, and the others wait for its end.</summary>
/// <remarks>
/// Of the app's own pool alone. Migrations, refolding, backups, exports and their proofs read whole tables, on connections of their own.
/// </remarks>
internal static class StatementLimit
{
    private const string Name = "statement_timeout";

    // OWASP API Security Top 10 2023, API4: a limit there must be; five seconds are ours.
    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(5);

    /// <summary>Unless whoever runs the floor has set another one.</summary>
    public static string Within(string connection)
    {
        var read = new NpgsqlConnectionStringBuilder(connection);
        if (read.Options?.Contains(Name, StringComparison.OrdinalIgnoreCase) is true)
        {
            return connection;
        }

        var limit = string.Create(CultureInfo.InvariantCulture, $"-c {Name}={Longest.TotalMilliseconds}");
        read.Options = $"{read.Options} {limit}".TrimStart();
        return read.ConnectionString;
    }
}
