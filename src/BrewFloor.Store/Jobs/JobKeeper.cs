using BrewFloor.Domain.Log;
using BrewFloor.Store.House;
using BrewFloor.Store.Log;
using Npgsql;

namespace BrewFloor.Store.Jobs;

/// <summary>Looks at jobs when their time comes, and keeps what people say about them.</summary>
public sealed class JobKeeper(NpgsqlDataSource database, RulesOnHand rules)
{
    private const int AtOnce = 100;

    /// <summary>A subject that somebody writes about is left to them.</summary>
    internal string SweepLock { get; init; } = $"{Locks.OfRow} SKIP LOCKED";

    /// <summary>
    /// An append without an entry: takes subjects whose jobs change by now, looks at them anew, and says so. Whoever holds a
    /// subject's lock writes its jobs already, so it is left to them; any number of sweeps may run.
    /// </summary>
    /// <returns>How many subjects were looked at; 0: nothing is due any more, or somebody else has it.</returns>
    public async Task<int> SweepAsync(DateTimeOffset now, CancellationToken stop)
    {
        await using var connection = await database.OpenConnectionAsync(stop);
        await using var transaction = await connection.BeginTransactionAsync(stop);
        var subjects = await TakeDueAsync(connection, now, stop);
        if (subjects.Count > 0)
        {
            await LookAsync(connection, subjects, Times.Cut(now), stop);
        }

        await transaction.CommitAsync(stop);
        return subjects.Count;
    }

    /// <summary>Somebody does it: the others needn't.</summary>
    /// <returns>False: it is done already, or somebody else does it.</returns>
    public Task<bool> TakeAsync(Guid job, Guid person, CancellationToken stop) =>
        ChangeAsync(job, "taken_by = $2, taken_at = clock_timestamp()", "taken_by IS NULL", stop, person);

    /// <summary>Whoever took it doesn't do it after all.</summary>
    /// <returns>False: it is done already, or not theirs.</returns>
    public Task<bool> GiveBackAsync(Guid job, Guid person, CancellationToken stop) =>
        ChangeAsync(job, "taken_by = NULL, taken_at = NULL", "taken_by = $2", stop, person);

    /// <summary>Whoever took it is away: it is anybody's again.</summary>
    /// <returns>False: it is done already.</returns>
    public Task<bool> FreeAsync(Guid job, CancellationToken stop) =>
        ChangeAsync(job, "taken_by = NULL, taken_at = NULL", "true", stop);

    /// <summary>Not now, and why.</summary>
    /// <returns>False: it is done already.</returns>
    public Task<bool> PutOffAsync(Guid job, DateTimeOffset until, string reason, Guid person, CancellationToken stop)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(reason);
        return ChangeAsync(
            job,
            "put_off_until = $2, put_off_reason = $3, put_off_by = $4",
            "true",
            stop,
            Times.Cut(until),
            reason,
            person
        );
    }

    private async Task<List<Subject>> TakeDueAsync(
        NpgsqlConnection connection,
        DateTimeOffset now,
        CancellationToken stop
    )
    {
        await using var batch = connection.CreateBatch();
        foreach (var (kind, table) in SubjectKinds.InLockOrder)
        {
            batch.Add(
                $"""
                SELECT '{SubjectKinds.NameOf(kind)}', id FROM {table} WHERE id IN (
                    SELECT subject_id FROM states WHERE kind = '{SubjectKinds.NameOf(kind)}' AND next_edge <= $1
                    ORDER BY next_edge LIMIT {AtOnce}
                ) ORDER BY id {SweepLock}
                """,
                now
            );
        }

        var subjects = new List<Subject>();
        await using var reader = await batch.ExecuteReaderAsync(stop);
        do
        {
            while (await reader.ReadAsync(stop))
            {
                subjects.Add(new(SubjectKinds.Of(reader.GetString(0)), reader.GetGuid(1)));
            }
        } while (await reader.NextResultAsync(stop));

        return subjects;
    }

    private async Task LookAsync(
        NpgsqlConnection connection,
        List<Subject> subjects,
        DateTimeOffset now,
        CancellationToken stop
    )
    {
        var opened = await Opening.ReadAsync(connection, new(subjects), rules, Locks.None, stop);
        var jobs = new JobKeeping(opened.Jobs, now);
        jobs.Look(opened.Things, opened.Rules, opened.Kept.ToDictionary(k => k.Key, k => k.Value.State), subjects);
        await using var batch = connection.CreateBatch();
        batch.Add(
            """
            UPDATE states SET next_edge = edges.at
            FROM unnest($1::uuid[], $2::timestamptz[]) AS edges(id, at) WHERE subject_id = edges.id
            """,
            subjects.Select(s => s.Id).ToArray(),
            Statements.Instants(subjects.Select(s => jobs.NextEdges[s]))
        );
        jobs.Write(batch, struck: [], reopens: false);
        await batch.ExecuteNonQueryAsync(stop);
    }

    // Under the subject's lock: an entry that resolves the job waits, or is seen.
    private async Task<bool> ChangeAsync(
        Guid job,
        string change,
        string where,
        CancellationToken stop,
        params object[] values
    )
    {
        await using var connection = await database.OpenConnectionAsync(stop);
        await using var transaction = await connection.BeginTransactionAsync(stop);
        await using var batch = connection.CreateBatch();
        batch.Add(Locks.Usual.Limit);
        foreach (var (_, table) in SubjectKinds.InLockOrder)
        {
            batch.Add(
                $"SELECT 1 FROM {table} WHERE id = (SELECT subject_id FROM jobs WHERE id = $1) {Locks.OfRow}",
                job
            );
        }

        batch.Add($"UPDATE jobs SET {change} WHERE id = $1 AND resolved_at IS NULL AND {where}", [job, .. values]);
        batch.Add("SELECT pg_notify('floor', 'jobs')");
        await batch.ExecuteNonQueryAsync(stop);
        var changed = batch.BatchCommands[^2].RecordsAffected > 0;
        await transaction.CommitAsync(stop);
        return changed;
    }
}
