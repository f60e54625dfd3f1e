using BrewFloor.Store.Log;
using Npgsql;

namespace BrewFloor.Store.Jobs;

/// <summary>How many jobs wait for somebody: for the navigation, which stands on every page.</summary>
public sealed class DueJobs(NpgsqlDataSource database)
{
    internal const string Question = """
        SELECT count(*)::int FROM jobs
        WHERE resolved_at IS NULL AND due_at <= $1 AND (put_off_until IS NULL OR put_off_until <= $1)
        """;

    /// <summary>Due or overdue at <paramref name="now"/>, and not put off beyond it.</summary>
    public async Task<int> CountAsync(DateTimeOffset now, CancellationToken stop)
    {
        await using var connection = await database.OpenConnectionAsync(stop);
        await using var batch = connection.CreateBatch();
        batch.Add(Question, now);
        return await batch.ExecuteScalarAsync(stop) is int count ? count : 0;
    }
}
