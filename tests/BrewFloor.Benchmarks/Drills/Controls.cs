using BrewFloor.Store.Log;
using BrewFloor.Store.PrivateServer;
using Npgsql;

namespace BrewFloor.Benchmarks.Drills;

/// <summary>Shows on the drill's own log that the reckoning finds what it is for: each fault is put in, and must be counted.</summary>
internal static class Controls
{
    public const int Faults = 6;

    private const string OtherState = """
        UPDATE states SET state = state || '{"heel_l": 1.5}' WHERE subject_id IN (SELECT id FROM tanks LIMIT 1)
        """;

    private const string NoPlace = """
        DELETE FROM entry_subjects WHERE entry_id = (SELECT id FROM entries ORDER BY seq LIMIT 1)
        """;

    /// <returns>The faults that were not found; none is right.</returns>
    public static async Task<IReadOnlyList<string>> MissedAsync(
        Crew crew,
        BorrowedDatabase database,
        CancellationToken stop
    )
    {
        var missed = new List<string>();
        var (ledger, seen) = (crew.Ledger, crew.Seen);
        async Task ExpectAsync(
            string fault,
            Func<Reckoning, int> count,
            IEnumerable<Acknowledged> acknowledged,
            IReadOnlySet<Guid> read
        )
        {
            var found = await Reckoning.OfAsync(acknowledged, ledger.Requests, read, database, stop);
            if (count(found) < 1)
            {
                missed.Add(fault);
            }
        }

        var said = ledger.Acknowledged.Values.ToArray();
        await ExpectAsync(
            "an entry lost",
            found => found.Lost,
            [.. said, new(Guid.CreateVersion7(), 1, default)],
            seen
        );
        await ExpectAsync("another number", found => found.Differs, [said[0] with { Seq = said[0].Seq + 1 }], seen);
        await ExpectAsync("an entry passed over", found => found.Unseen, said, seen.Skip(1).ToHashSet());
        await DoAsync(database, OtherState, stop);
        await ExpectAsync("a state that is no fold", found => found.Unequal, said, seen);
        await WriteAgainAsync(database, stop);
        await ExpectAsync("an entry written twice", found => found.Twice, said, seen);
        await DoAsync(database, NoPlace, stop);
        await ExpectAsync("an entry without its place", found => found.Half, said, seen);
        return missed;
    }

    // As a writer would that makes up a new id for each try.
    private static async Task WriteAgainAsync(BorrowedDatabase database, CancellationToken stop)
    {
        await using var services = DrillFloor.Services(database);
        var lines = await services.GetRequiredService<LogReader>().SinceAsync(0, about: null, 1, stop);
        var again = lines.Items[0].Entry with { Id = Guid.CreateVersion7(), At = default };
        var appended = await services
            .GetRequiredService<FloorLog>()
            .AppendAsync(new LogRequest(again, DrillFloor.Owner), stop);
        if (appended is not Appended.Stored)
        {
            throw new InvalidOperationException("The control could not write.");
        }
    }

    private static async Task DoAsync(BorrowedDatabase database, string statement, CancellationToken stop)
    {
        await using var owner = NpgsqlDataSource.Create(database.Connections.Owner);
        await using var command = owner.CreateCommand(statement);
        if (await command.ExecuteNonQueryAsync(stop) == 0)
        {
            throw new InvalidOperationException($"The control changed nothing: {statement}");
        }
    }
}
