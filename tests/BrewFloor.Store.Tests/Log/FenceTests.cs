using BrewFloor.Store.Tests.Postgres;
using Npgsql;
using static BrewFloor.Store.Tests.Postgres.FreshFloor;

namespace BrewFloor.Store.Tests.Log;

/// <summary>What the tables refuse by themselves, whoever asks.</summary>
public sealed class FenceTests(TestServer server) : IAsyncLifetime
{
    private const string SecondBatch =
        "INSERT INTO tank_occupancies (tank_id, batch_id, during) SELECT tank_id, batch_id, tstzrange(now() - interval '1 h', NULL) FROM tank_occupancies";

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

        var refused = await Assert.ThrowsAsync<PostgresException>(() => _floor.AsOwnerAsync(SecondBatch));

        Assert.Equal("ex_tank_occupancies_one_batch_at_a_time", refused.ConstraintName);
    }

    [Fact]
    public async Task Without_the_exclusion_the_table_would_take_two()
    {
        (await _floor.InsistAsync(Ann, Fill(K3, NewId(), at: Ago(2)))).Stored();
        await _floor.AsOwnerAsync(
            "ALTER TABLE tank_occupancies DROP CONSTRAINT ex_tank_occupancies_one_batch_at_a_time"
        );

        await _floor.AsOwnerAsync(SecondBatch);

        Assert.Equal(2L, await _floor.AskAsync<long>("SELECT count(*) FROM tank_occupancies"));
    }

    [Fact]
    public async Task Only_what_is_there_at_the_end_of_a_transaction_counts()
    {
        (await _floor.InsistAsync(Ann, Fill(K3, NewId(), at: Ago(2)))).Stored();
        const string Corrects =
            $"{SecondBatch}; DELETE FROM tank_occupancies WHERE lower(during) < now() - interval '90 min'";

        await Assert.ThrowsAsync<PostgresException>(() =>
            _floor.AsOwnerAsync($"BEGIN; SET CONSTRAINTS ALL IMMEDIATE; {Corrects}; COMMIT")
        );
        await _floor.AsOwnerAsync($"BEGIN; {Corrects}; COMMIT");

        Assert.Equal(1L, await _floor.AskAsync<long>("SELECT count(*) FROM tank_occupancies"));
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
    public async Task It_starts_on_the_kinds_it_knows()
    {
        await _floor.AsOwnerAsync("INSERT INTO entry_kinds (kind, version) VALUES ('noted', 1)");

        await Migrator.MigrateAsync(_floor.Connections.Owner, "Europe/Berlin", Stop);
    }

    [Fact]
    public async Task A_kind_that_the_table_of_kinds_lacks_cannot_be_written_past_it()
    {
        await _floor.SendAsync(Note(K3, "a"));
        const string Unknown = """
            INSERT INTO entries SELECT (jsonb_populate_record(e, jsonb_build_object('id', gen_random_uuid(), 'seq', 99, 'kind', 'krausened'))).*
            FROM entries e
            """;

        var refused = await Assert.ThrowsAsync<PostgresException>(() => _floor.AsOwnerAsync(Unknown));
        Assert.Equal("fk_entries_entry_kinds_kind_version", refused.ConstraintName);

        // Without that, a start would not hear of it.
        await _floor.AsOwnerAsync($"ALTER TABLE entries DROP CONSTRAINT {refused.ConstraintName}; {Unknown}");
        await Migrator.MigrateAsync(_floor.Connections.Owner, "Europe/Berlin", Stop);
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
    public async Task A_state_that_says_it_is_of_this_fold_is_believed_however_wrong()
    {
        (await _floor.InsistAsync(Ann, Fill(K3, NewId(), at: Ago(2)))).Stored();
        await _floor.AsOwnerAsync("UPDATE states SET state = state - 'contents'");

        await Migrator.MigrateAsync(_floor.Connections.Owner, "Europe/Berlin", Stop);

        Assert.False((await _floor.TankAsync(K3)).HoldsBeer);
    }
}
