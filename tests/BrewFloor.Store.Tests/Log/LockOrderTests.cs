using BrewFloor.Domain.Log;
using BrewFloor.Store.Log;
using BrewFloor.Store.Tests.Postgres;
using Npgsql;
using static BrewFloor.Store.Tests.Postgres.FreshFloor;

namespace BrewFloor.Store.Tests.Log;

/// <summary>Tanks are locked by id, and whoever is sacrificed to somebody else all the same is tried again, three times.</summary>
public sealed class LockOrderTests(TestServer server) : IAsyncLifetime
{
    private static readonly Locks Once = new() { Tries = 1 };
    private static readonly Locks Backwards = new() { Rows = $"ORDER BY id DESC {Locks.OfRow}" };

    private readonly FreshFloor _floor = new(server);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public ValueTask InitializeAsync() => _floor.InitializeAsync();

    public ValueTask DisposeAsync() => _floor.DisposeAsync();

    [Fact]
    public async Task Locked_by_id_neither_of_two_holds_what_the_other_waits_for() =>
        Assert.Equal([null, null], await CrossAsync(Once, Once));

    [Fact]
    public async Task Locked_in_opposite_orders_one_of_two_is_sacrificed() =>
        Assert.Equal(
            [PostgresErrorCodes.DeadlockDetected],
            (await CrossAsync(Once, Backwards with { Tries = 1 })).OfType<string>()
        );

    [Fact]
    public async Task Who_is_sacrificed_is_tried_again()
    {
        Assert.Equal([null, null], await CrossAsync(Locks.Usual, Backwards));
        Assert.Equal(6L, await _floor.AskAsync<long>("SELECT count(*) FROM entries"));
    }

    [Theory]
    [InlineData(3, true)]
    [InlineData(4, false)] // the control: it isn't tried for ever
    public async Task What_the_server_could_not_serialize_is_tried_three_times_more(int failures, bool isStored)
    {
        await _floor.AsOwnerAsync(
            $"""
            CREATE SEQUENCE tries;
            CREATE FUNCTION fail_some() RETURNS trigger LANGUAGE plpgsql SECURITY DEFINER AS $$
            BEGIN
                IF nextval('tries') <= {failures} THEN RAISE EXCEPTION 'another time' USING ERRCODE = '40001'; END IF;
                RETURN NEW;
            END $$;
            CREATE TRIGGER tr_fail_some BEFORE INSERT ON entries FOR EACH ROW EXECUTE FUNCTION fail_some();
            """
        );

        var failure = await FailureAsync(_floor.Log, [K3]);

        Assert.Equal(isStored ? null : PostgresErrorCodes.SerializationFailure, failure);
        Assert.Equal(isStored ? 1L : 0L, await _floor.AskAsync<long>("SELECT count(*) FROM entries"));
    }

    // P2 is held. By id, both wait there or behind each other; one that comes from the other end already has what the first will want.
    private async Task<string?[]> CrossAsync(Locks one, Locks other)
    {
        await using var held = await Holder.OfTankAsync(_floor.Database, P2);
        var first = FailureAsync(new(_floor.Database, _floor.Rules) { Locks = one }, [B1, P2, K3]);
        Assert.Equal(1, await _floor.WaitingAsync(1));
        var second = FailureAsync(new(_floor.Database, _floor.Rules) { Locks = other }, [K3, P2, B1]);
        Assert.Equal(2, await _floor.WaitingAsync(2));
        await held.LetGoAsync();
        return await Task.WhenAll(first, second);
    }

    /// <returns>The error's SQLSTATE; null: stored.</returns>
    private static async Task<string?> FailureAsync(FloorLog log, IEnumerable<Guid> tanks)
    {
        try
        {
            var round = tanks.Select(LogEntry (tank) => Note(tank, "round")).ToArray();
            (await log.AppendAsync(Request(Ann, round), Stop)).Stored();
            return null;
        }
        catch (PostgresException e)
        {
            return e.SqlState;
        }
    }
}
