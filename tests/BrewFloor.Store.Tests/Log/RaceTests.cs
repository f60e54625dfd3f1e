using BrewFloor.Domain.Log;
using BrewFloor.Store.Log;
using BrewFloor.Store.Tests.Postgres;
using Npgsql;
using static BrewFloor.Store.Tests.Postgres.FreshFloor;

namespace BrewFloor.Store.Tests.Log;

/// <summary>Many at once. The winner is held at the head of the log until the server itself says that the others wait.</summary>
public sealed class RaceTests(TestServer server) : IAsyncLifetime
{
    private const int People = 50;

    private readonly FreshFloor _floor = new(server);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public ValueTask InitializeAsync() => _floor.InitializeAsync();

    public ValueTask DisposeAsync() => _floor.DisposeAsync();

    [Fact]
    public async Task Of_fifty_people_filling_one_tank_at_once_one_is_stored_and_forty_nine_hear_that_it_is_occupied()
    {
        var rowLock = Environment.GetEnvironmentVariable("LEAVE_OUT") is "row-locks" ? "" : Opening.RowLock;
        var (waiting, answers) = await RaceAsync(rowLock, expected: People);

        Assert.Single(answers.OfType<Appended.Stored>());
        Assert.All(answers.OfType<Appended.Refused>(), refused => Assert.Contains("tank-occupied", refused.Codes()));
        Assert.Equal(People - 1, answers.OfType<Appended.Refused>().Count());
        Assert.Equal(People, waiting); // forty-nine for the tank, the winner for the head
        Assert.Equal(1L, await _floor.AskAsync<long>("SELECT count(*) FROM batches"));
    }

    [Fact]
    public async Task Without_the_row_locks_the_fence_catches_what_the_door_lets_through()
    {
        var (_, answers) = await RaceAsync(rowLock: "", expected: People);

        // Several are judged on the empty tank and go on to write: the exclusion constraint refuses all but one.
        Assert.InRange(answers.Count(a => a is null), 1, People - 1);
    }

    [Fact]
    public async Task Without_the_heads_lock_a_reader_skips_entries()
    {
        var skipped = await SkippedAsync("");
        Assert.True(skipped);
    }

    [Fact]
    public async Task With_the_heads_lock_no_number_is_seen_before_a_smaller_one() =>
        Assert.False(await SkippedAsync(Writing.HeadLock));

    // One writer has drawn its number and isn't done; does another one's larger number show meanwhile?
    private async Task<bool> SkippedAsync(string headLock)
    {
        FloorLog log = new(_floor.Database, _floor.Rules) { HeadLock = headLock };
        (await log.AppendAsync(Request(Ann, Note(P2, "first")), Stop)).Stored();
        await using var slow = await _floor.Database.OpenConnectionAsync(Stop);
        await using var transaction = await slow.BeginTransactionAsync(Stop);
        await slow.DoAsync(headLock.Length > 0 ? headLock : "SELECT 1", Stop);
        await slow.DoAsync("SELECT nextval('entry_seq')", Stop);

        var quick = log.AppendAsync(Request(Ann, Note(P2, "quick")), Stop);
        var isWaiting = headLock.Length > 0 && await WaitingAsync(1) == 1;
        await (isWaiting ? Task.CompletedTask : quick);
        var seen = await _floor.AskAsync<long>("SELECT count(*) FROM entries");
        await transaction.RollbackAsync(Stop);
        (await quick).Stored();
        Assert.Equal(headLock.Length > 0, isWaiting);
        return seen == 2;
    }

    // A null: the fence threw.
    private async Task<(int Waiting, Appended?[] Answers)> RaceAsync(string rowLock, int expected)
    {
        await using var crowd = StoreSetup.DataSource(
            new NpgsqlConnectionStringBuilder(_floor.Connections.Application) { MaxPoolSize = People }.ConnectionString
        );
        FloorLog log = new(crowd, _floor.Rules) { RowLock = rowLock };
        var judged = await log.CheckAsync(Request(Ann, Fill(K3, NewId())), Stop);
        Answer answer = new("it is so", [.. judged[0].Verdict.Objections.Select(o => o.Code)], AlreadyHappened: true);
        await using var gate = await _floor.Database.OpenConnectionAsync(Stop);
        await using var held = await gate.BeginTransactionAsync(Stop);
        await gate.DoAsync(Writing.HeadLock, Stop);

        var race = Task.WhenAll(Enumerable.Range(0, People).Select(_ => FillAsync(log, answer)));
        var waiting = await WaitingAsync(expected);
        await held.CommitAsync(Stop);
        return (waiting, await race);
    }

    private static async Task<Appended?> FillAsync(FloorLog log, Answer answer)
    {
        try
        {
            return await log.AppendAsync(new([new(Fill(K3, NewId()), answer)], Ann), Stop);
        }
        catch (PostgresException e)
            when (e.SqlState is PostgresErrorCodes.ExclusionViolation or PostgresErrorCodes.DataException)
        {
            return null;
        }
    }

    // Polls, never sleeps for luck. As the owner: the app's role isn't told what others wait for.
    private async Task<int> WaitingAsync(int expected)
    {
        const string Question =
            "SELECT count(*) FROM pg_stat_activity WHERE datname = current_database() AND wait_event_type = 'Lock'";
        await using var owner = new NpgsqlConnection(_floor.Connections.Owner);
        await owner.OpenAsync(Stop);
        await using var command = new NpgsqlCommand(Question, owner);
        var waiting = 0;
        for (var poll = 0; poll < 400 && waiting < expected; poll++)
        {
            await Task.Delay(20, Stop);
            waiting = (int)(long)(await command.ExecuteScalarAsync(Stop))!;
        }

        return waiting;
    }
}
