using System.Diagnostics;
using BrewFloor.Domain.Log;
using BrewFloor.Store.House;
using Npgsql;

namespace BrewFloor.Store.Log;

/// <summary>
/// The one way in: locks what the entries are about, judges them, numbers and writes them, folds them, keeps the jobs, tells
/// the pages. One transaction in three round trips.
/// </summary>
public sealed class FloorLog(NpgsqlDataSource database, RulesOnHand rules)
{
    internal Locks Locks { get; init; } = Locks.Usual;

    private readonly KindsStored _kinds = new();

    public Task<Appended> AppendAsync(LogRequest request, CancellationToken stop) =>
        AppendAsync(request, beside: null, stop);

    /// <summary>"May I?": what the floor says to each entry, with nothing locked and nothing stored.</summary>
    public Task<Checked> CheckAsync(LogRequest request, CancellationToken stop) => CheckAsync(request, null, stop);

    internal async Task<Appended> AppendAsync(LogRequest request, Beside? beside, CancellationToken stop)
    {
        HashSet<Subject> also = [.. beside?.Subjects ?? []];
        var since = Stopwatch.GetTimestamp();
        for (var attempt = 1; ; )
        {
            try
            {
                if (await TryAppendAsync(request, beside, also, stop) is { } appended)
                {
                    LogMeter.Count(appended, request.Entries.Select(sent => EntryKinds.NameOf(sent.Entry)), since);
                    return appended;
                }

                // It reached somebody whose lock it didn't hold: the set has grown, so from the start with all of them.
            }
            catch (PostgresException e) when (attempt < Locks.Tries && IsWorthAnotherTry(e))
            {
                // Nothing was written: the transaction is gone, so the whole of it is done again.
                attempt++;
            }
        }
    }

    internal async Task<Checked> CheckAsync(LogRequest request, Beside? beside, CancellationToken stop)
    {
        HashSet<Subject> also = [];
        while (true)
        {
            await using var connection = await database.OpenConnectionAsync(stop);
            await using var transaction = await connection.BeginTransactionAsync(
                System.Data.IsolationLevel.RepeatableRead,
                stop
            );
            var session = await Session.OpenAsync(connection, request, also, rules, Locks.None, stop);
            session?.Welcome(beside);
            if (session is { Conflict: null } && await session.HearAsync(stop))
            {
                return new(Conflict: null, [.. session.Entries.Select(e => new Judged(e.Entry.Id, e.Verdict))]);
            }

            if (session?.Conflict is { } taken)
            {
                return new(taken, []);
            }
        }
    }

    private async Task<Appended?> TryAppendAsync(
        LogRequest request,
        Beside? beside,
        HashSet<Subject> also,
        CancellationToken stop
    )
    {
        await using var connection = await database.OpenConnectionAsync(stop);
        await using var transaction = await connection.BeginTransactionAsync(stop);
        var session = await Session.OpenAsync(connection, request, also, rules, Locks, stop);
        if (session is null)
        {
            return null;
        }

        if (session.Conflict is { } taken)
        {
            return new Appended.Conflict(taken);
        }

        session.Welcome(beside);
        if (beside is not null && !await beside.WriteAsync(connection, session.Opened, stop))
        {
            return new Appended.Withheld();
        }

        if (!await session.HearAsync(stop))
        {
            return null;
        }

        if (session.Entries.Any(e => !e.Verdict.Allows(e.Sent.Answer)))
        {
            return new Appended.Refused([
                .. session
                    .Entries.Where(e => e.Verdict.Objections is not [])
                    .Select(e => new Judged(e.Entry.Id, e.Verdict)),
            ]);
        }

        var written = await new Writing(connection, session, _kinds) { Head = Locks.Head }.WriteAsync(stop);
        await transaction.CommitAsync(stop);
        _kinds.Committed(session.Entries.Select(e => EntryKinds.NameOf(e.Entry)));
        return new Appended.Stored([
            .. request.Entries.Select(s => s.Entry.Id).Distinct().Select(id => session.Outcome(id, written)),
        ]);
    }

    // A second sender of one id may reach the insert first: on the next try it is found where it stands.
    private static bool IsWorthAnotherTry(PostgresException e) =>
        e
            is { SqlState: PostgresErrorCodes.DeadlockDetected or PostgresErrorCodes.SerializationFailure }
                or {
                    SqlState: PostgresErrorCodes.UniqueViolation,
                    ConstraintName: "pk_entries" or "pk_batches" or "pk_cultures" or "pk_items"
                };
}
