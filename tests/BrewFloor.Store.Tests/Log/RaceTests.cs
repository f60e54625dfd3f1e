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
        var (waiting, answers) = await RaceAsync(Locks.Usual, expected: People);

        Assert.Single(answers.OfType<Appended.Stored>());
        Assert.All(answers.OfType<Appended.Refused>(), refused => Assert.Contains("tank-occupied", refused.Codes()));
        Assert.Equal(People - 1, answers.OfType<Appended.Refused>().Count());
        Assert.Equal(People, waiting); // forty-nine for the tank, the winner for the head
        Assert.Equal(1L, await _floor.AskAsync<long>("SELECT count(*) FROM batches"));
    }

    [Fact]
    public async Task Without_the_row_locks_the_fence_catches_what_the_door_lets_through()
    {
        var (_, answers) = await RaceAsync(Locks.None, expected: People);

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
        Assert.False(await SkippedAsync(Locks.OfHead));

    [Fact]
    public async Task A_refusal_never_queues_at_the_head()
    {
        await using var held = await Holder.OfHeadAsync(_floor.Database);

        Assert.Equal(["unknown-tank"], (await _floor.SendAsync(Note(NewId(), "lost"))).Codes());

        // What is stored does: else the refusal would say nothing.
        var stored = _floor.SendAsync(Note(P2, "fine"));
        Assert.Equal(1, await _floor.WaitingAsync(1));
        await held.LetGoAsync();
        (await stored).Stored();
    }

    [Fact]
    public async Task With_the_heads_lock_a_culture_gets_the_number_after_one_that_is_being_written()
    {
        (await ReceiveBesideAnotherAsync(Locks.Usual)).Stored();

        Assert.Equal(2, await _floor.AskAsync<int>("SELECT max(number) FROM cultures"));
    }

    [Fact]
    public async Task Without_the_heads_lock_it_gets_the_same_and_the_table_refuses_it()
    {
        var refused = await Assert.ThrowsAsync<PostgresException>(() =>
            ReceiveBesideAnotherAsync(new() { Head = "SELECT 1" })
        );

        Assert.Equal("ix_cultures_number", refused.ConstraintName);
    }

    private async Task<Appended> ReceiveBesideAnotherAsync(Locks locks)
    {
        await using var other = await Holder.OfHeadAsync(_floor.Database);
        await other.DoAsync("INSERT INTO cultures (id, number, version, thing) VALUES ($1, 1, 1, '{}')", NewId());
        FloorLog log = new(_floor.Database, _floor.Rules) { Locks = locks };
        var received = log.AppendAsync(Request(Ann, Received(NewId())), Stop);
        Assert.Equal(1, await _floor.WaitingAsync(1)); // at the head, or at the other's number
        await other.CommitAsync();
        return await received;
    }

    // One writer has drawn its number and isn't done; does another one's larger number show meanwhile?
    private async Task<bool> SkippedAsync(string headLock)
    {
        FloorLog log = new(_floor.Database, _floor.Rules) { Locks = new() { Head = headLock } };
        (await log.AppendAsync(Request(Ann, Note(P2, "first")), Stop)).Stored();
        await using var slow = await _floor.Database.OpenConnectionAsync(Stop);
        await using var transaction = await slow.BeginTransactionAsync(Stop);
        await slow.DoAsync(headLock.Length > 0 ? headLock : "SELECT 1", Stop);
        await slow.DoAsync("SELECT nextval('entry_seq')", Stop);

        var quick = log.AppendAsync(Request(Ann, Note(P2, "quick")), Stop);
        var isWaiting = headLock.Length > 0 && await _floor.WaitingAsync(1) == 1;
        await (isWaiting ? Task.CompletedTask : quick);
        var seen = await _floor.AskAsync<long>("SELECT count(*) FROM entries");
        await transaction.RollbackAsync(Stop);
        (await quick).Stored();
        Assert.Equal(headLock.Length > 0, isWaiting);
        return seen == 2;
    }

    // A null: the fence threw.
    private async Task<(int Waiting, Appended?[] Answers)> RaceAsync(Locks locks, int expected)
    {
        await using var crowd = StoreSetup.DataSource(
            new NpgsqlConnectionStringBuilder(_floor.Connections.Application) { MaxPoolSize = People }.ConnectionString
        );
        FloorLog log = new(crowd, _floor.Rules) { Locks = locks };
        var judged = await log.CheckAsync(Request(Ann, Fill(K3, NewId())), Stop);
        Answer answer = new(
            "it is so",
            [.. judged.Judged[0].Verdict.Objections.Select(o => o.Code)],
            AlreadyHappened: true
        );
        await using var held = await Holder.OfHeadAsync(_floor.Database);

        var race = Task.WhenAll(Enumerable.Range(0, People).Select(_ => FillAsync(log, answer)));
        var waiting = await _floor.WaitingAsync(expected);
        await held.LetGoAsync();
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
}
