using BrewFloor.Store.Log;
using BrewFloor.Store.Tests.Postgres;
using Npgsql;
using static BrewFloor.Store.Tests.Postgres.FreshFloor;

namespace BrewFloor.Store.Tests.Log;

/// <summary>What the tables refuse by themselves, whoever asks.</summary>
public sealed class FenceTests(TestServer server) : IAsyncLifetime
{
    private readonly FreshFloor _floor = new(server);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public ValueTask InitializeAsync() => _floor.InitializeAsync();

    public ValueTask DisposeAsync() => _floor.DisposeAsync();

    [Theory]
    [InlineData("UPDATE entries SET note = 'other'")]
    [InlineData("DELETE FROM entries")]
    [InlineData("TRUNCATE entries CASCADE")]
    public async Task The_log_is_append_only_even_for_its_owner(string statement)
    {
        await _floor.SendAsync(Note(K3, "as written"));

        var refused = await Assert.ThrowsAsync<PostgresException>(() => _floor.AsOwnerAsync(statement));

        Assert.Equal(PostgresErrorCodes.RestrictViolation, refused.SqlState);
    }

    [Fact]
    public async Task Without_the_trigger_the_owner_could_rewrite_it()
    {
        await _floor.SendAsync(Note(K3, "as written"));
        await _floor.AsOwnerAsync("DROP TRIGGER tr_entries_stay_as_written ON entries");

        await _floor.AsOwnerAsync("UPDATE entries SET note = 'other'");

        Assert.Equal("other", await _floor.AskAsync<string>("SELECT note FROM entries"));
    }

    [Theory]
    [InlineData("UPDATE entries SET note = 'other'")]
    [InlineData("DELETE FROM house_rules")]
    [InlineData("CREATE TABLE extra (id int)")]
    [InlineData("DROP TABLE jobs")]
    [InlineData("ALTER TABLE entries DISABLE TRIGGER ALL")]
    public async Task The_app_changes_neither_the_log_nor_the_tables(string statement)
    {
        var refused = await Assert.ThrowsAsync<PostgresException>(() => _floor.AskAsync<int?>(statement));

        Assert.Equal(PostgresErrorCodes.InsufficientPrivilege, refused.SqlState);
    }

    [Fact]
    public async Task Two_batches_in_one_tank_at_once_are_refused_by_the_table()
    {
        (await _floor.InsistAsync(Ann, Fill(K3, NewId(), at: Ago(2)))).Stored();

        var refused = await Assert.ThrowsAsync<PostgresException>(() =>
            _floor.AsOwnerAsync(
                "INSERT INTO tank_occupancies (tank_id, batch_id, during) SELECT tank_id, batch_id, tstzrange(now() - interval '1 h', NULL) FROM tank_occupancies"
            )
        );

        Assert.Equal("ex_tank_occupancies_one_batch_at_a_time", refused.ConstraintName);
    }

    [Fact]
    public async Task The_app_does_not_start_on_kinds_it_does_not_know()
    {
        await _floor.AsOwnerAsync("INSERT INTO entry_kinds (kind, version) VALUES ('krausened', 1), ('noted', 2)");

        var refused = await Assert.ThrowsAsync<UnknownKindsException>(() =>
            Migrator.MigrateAsync(_floor.Connections.Owner, "Europe/Berlin", Stop)
        );

        Assert.Equal("krausened v1, noted v2", refused.Kinds);
    }

    [Fact]
    public async Task Every_kind_in_the_log_is_in_the_table_of_kinds_also_after_a_refusal()
    {
        await _floor.SendAsync(Note(K3, "a"), Note(NewId(), "lost"));
        (await _floor.SendAsync(Note(K3, "a"))).Stored();

        Assert.Equal("noted", await _floor.AskAsync<string>("SELECT string_agg(kind, ',') FROM entry_kinds"));
    }

    [Fact]
    public async Task Two_instances_that_start_at_once_migrate_one_after_the_other()
    {
        await _floor.AsOwnerAsync("DROP SCHEMA public CASCADE; CREATE SCHEMA public");

        await Task.WhenAll(
            Enumerable.Range(0, 3).Select(_ => Migrator.MigrateAsync(_floor.Connections.Owner, "Europe/Berlin", Stop))
        );

        Assert.Equal(1L, await _floor.AskAsync<long>("SELECT count(*) FROM house_rules"));
    }

    [Fact]
    public async Task A_state_of_an_older_fold_is_folded_anew_at_start_and_before()
    {
        (await _floor.InsistAsync(Ann, Fill(K3, NewId(), at: Ago(2)))).Stored();
        var kept = await _floor.TankAsync(K3);
        await _floor.AsOwnerAsync("UPDATE states SET fold_version = 0, state = state - 'contents'");

        (await _floor.SendAsync(Note(K3, "written meanwhile"))).Stored();
        Assert.Equal(kept.Contents, (await _floor.TankAsync(K3)).Contents);

        await _floor.AsOwnerAsync("UPDATE states SET fold_version = 0, state = state - 'contents'");
        await Migrator.MigrateAsync(_floor.Connections.Owner, "Europe/Berlin", Stop);
        Assert.Equal(kept.Contents, (await _floor.TankAsync(K3)).Contents);
    }

    [Fact]
    public async Task Whoever_listens_is_told_the_number()
    {
        await using var listener = await _floor.Database.OpenConnectionAsync(Stop);
        await listener.DoAsync("LISTEN floor", Stop);
        List<string> heard = [];
        listener.Notification += (_, told) => heard.Add(told.Payload);

        var stored = (await _floor.SendAsync(Note(K3, "a"))).Stored();
        await listener.WaitAsync(Stop);

        Assert.Contains($"entry {stored[0].Seq}", heard);
    }
}
