using BrewFloor.Domain.Tanks;
using BrewFloor.Store.Log;
using BrewFloor.Store.Tests.Postgres;
using Npgsql;
using UnitsNet;
using static BrewFloor.Store.Tests.Postgres.FreshFloor;

namespace BrewFloor.Store.Tests.Log;

public sealed class LockTests(TestServer server) : IAsyncLifetime
{
    private readonly FreshFloor _floor = new(server);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public ValueTask InitializeAsync() => _floor.InitializeAsync();

    public ValueTask DisposeAsync() => _floor.DisposeAsync();

    [Fact]
    public async Task Requests_that_name_the_same_tanks_in_any_order_never_hold_what_the_other_waits_for()
    {
        FloorLog log = new(_floor.Database, _floor.Rules) { Locks = new() { Tries = 1 } }; // a deadlock would show
        var all = await Task.WhenAll(
            Enumerable
                .Range(0, 60)
                .Select(i => i % 2 == 0 ? (Guid[])[K3, P2, B1] : [B1, P2, K3])
                .Select(tanks => log.AppendAsync(Request(Ann, [.. tanks.Select(tank => Note(tank, "round"))]), Stop))
        );

        Assert.All(all, a => a.Stored());
    }

    [Fact]
    public async Task A_lock_that_cannot_be_had_in_time_is_a_failure_and_nothing_is_written()
    {
        Assert.Equal(TimeSpan.FromSeconds(5), Locks.Usual.Patience);
        await using var held = await Holder.OfTankAsync(_floor.Database, K3);

        var failed = await Assert.ThrowsAsync<PostgresException>(() => Hasty.AppendAsync(Request(Ann, Waits), Stop));

        Assert.Equal(PostgresErrorCodes.LockNotAvailable, failed.SqlState);
        (await Hasty.AppendAsync(Request(Ann, Note(P2, "does not wait")), Stop)).Stored();
        Assert.Equal(1L, await _floor.AskAsync<long>("SELECT count(*) FROM entries"));
    }

    [Fact]
    public async Task Without_a_limit_it_waits_for_as_long_as_somebody_holds_the_lock()
    {
        await using var held = await Holder.OfTankAsync(_floor.Database, K3);
        FloorLog patient = new(_floor.Database, _floor.Rules) { Locks = new() { Patience = TimeSpan.Zero } };

        var waits = patient.AppendAsync(Request(Ann, Waits), Stop);
        Assert.Equal(1, await _floor.WaitingAsync(1));
        await Assert.ThrowsAsync<PostgresException>(() => Hasty.AppendAsync(Request(Ann, Waits), Stop));
        Assert.False(waits.IsCompleted); // the hasty one came later and is gone

        await held.LetGoAsync();
        (await waits).Stored();
    }

    [Fact]
    public async Task A_row_that_refers_to_a_locked_tank_can_be_written()
    {
        await using var held = await Holder.OfTankAsync(_floor.Database, K3);
        await _floor.AskAsync<int?>("INSERT INTO batches (id, number, version, thing) VALUES ($1, 1, 1, '{}')", K3);

        await _floor.AskAsync<int?>(
            "INSERT INTO tank_occupancies (tank_id, batch_id, during) VALUES ($1, $1, tstzrange(now(), NULL))",
            K3
        );
    }

    [Fact]
    public async Task Twenty_who_send_one_new_culture_at_once_hear_of_one()
    {
        const int Rounds = 10; // there is no row to lock yet: what it takes to go wrong is a matter of microseconds
        for (var round = 0; round < Rounds; round++)
        {
            var received = Received(NewId());

            var all = await Task.WhenAll(Enumerable.Range(0, 20).Select(_ => _floor.SendAsync(received)));

            Assert.Single(all.Select(a => a.Stored()[0].Seq).Distinct());
            Assert.Single(all, a => !a.Stored()[0].Again);
        }

        Assert.Equal(Rounds, await _floor.AskAsync<long>("SELECT count(*) FROM cultures"));
    }

    [Fact]
    public async Task New_cultures_at_once_are_numbered_one_after_the_other_and_a_refusal_uses_no_number()
    {
        var gone = Received(NewId()) with { Amount = default };

        var all = await Task.WhenAll(
            Enumerable
                .Range(0, 20)
                .Select(i => _floor.SendAsync(i % 2 == 0 ? Received(NewId()) : gone with { Id = NewId() }))
        );

        Assert.Equal(10, all.OfType<Appended.Stored>().Count());
        var numbers = (await _floor.Reader.CulturesAsync(Stop)).Floor.Cultures.Select(c => c.Thing.Number);
        Assert.Equal(Enumerable.Range(1, 10).Reverse(), numbers);
    }

    [Fact]
    public async Task A_late_entry_that_reaches_another_tank_locks_that_one_too()
    {
        var batch = NewId();
        (await _floor.InsistAsync(Ann, Fill(K3, batch, at: Ago(10)))).Stored();
        Racked racked = new(K3, P2, batch, Litres(850), Litres(50)) { Id = NewId(), At = Ago(5) };
        (await _floor.InsistAsync(Ann, racked)).Stored();
        await using var held = await Holder.OfTankAsync(_floor.Database, P2);

        // The reading is K3's alone, but what it is followed by is P2's too.
        PressureTaken late = new(K3, Pressure.FromKilopascals(0)) { Id = NewId(), At = Ago(7) };
        var failed = await Assert.ThrowsAsync<PostgresException>(() => Hasty.AppendAsync(Request(Ann, late), Stop));

        Assert.Equal(PostgresErrorCodes.LockNotAvailable, failed.SqlState);
        (await Hasty.AppendAsync(Request(Ann, late with { At = Ago(4) }), Stop)).Stored(); // nothing of P2's follows this one
    }

    [Fact]
    public async Task Locked_with_its_key_a_tank_could_not_be_referred_to_meanwhile()
    {
        await using var held = await Holder.OfAsync(
            _floor.Database,
            "SELECT 1 FROM tanks WHERE id = $1 FOR UPDATE",
            K3
        );
        await _floor.AskAsync<int?>("INSERT INTO batches (id, number, version, thing) VALUES ($1, 1, 1, '{}')", K3);

        var failed = await Assert.ThrowsAsync<PostgresException>(() =>
            _floor.AsOwnerAsync(
                $"SET lock_timeout = 100; INSERT INTO tank_occupancies (tank_id, batch_id, during) VALUES ('{K3}', '{K3}', tstzrange(now(), NULL))"
            )
        );

        Assert.Equal(PostgresErrorCodes.LockNotAvailable, failed.SqlState);
    }

    private FloorLog Hasty =>
        new(_floor.Database, _floor.Rules) { Locks = new() { Patience = TimeSpan.FromMilliseconds(100) } };

    private static Domain.Log.Noted Waits => Note(K3, "waits");
}
