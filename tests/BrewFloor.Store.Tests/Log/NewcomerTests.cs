using BrewFloor.Store.Tests.Postgres;
using Npgsql;
using static BrewFloor.Store.Tests.Postgres.FreshFloor;

namespace BrewFloor.Store.Tests.Log;

/// <summary>New batches and cultures come into being with the entry that brings them, or not at all.</summary>
public sealed class NewcomerTests(TestServer server) : IAsyncLifetime
{
    private readonly FreshFloor _floor = new(server);

    public ValueTask InitializeAsync() => _floor.InitializeAsync();

    public ValueTask DisposeAsync() => _floor.DisposeAsync();

    [Fact]
    public async Task An_entry_that_fails_at_the_last_leaves_no_batch_and_no_culture_behind()
    {
        await _floor.AsOwnerAsync(
            """
            CREATE FUNCTION fail() RETURNS trigger LANGUAGE plpgsql AS $$ BEGIN RAISE EXCEPTION 'out of paper'; END $$;
            CREATE CONSTRAINT TRIGGER tr_fail AFTER INSERT ON entry_subjects DEFERRABLE INITIALLY DEFERRED
                FOR EACH ROW EXECUTE FUNCTION fail();
            """
        );

        await Assert.ThrowsAsync<PostgresException>(() => _floor.InsistAsync(Ann, Fill(K3, NewId())));
        await Assert.ThrowsAsync<PostgresException>(() => _floor.SendAsync(Received(NewId())));
        Assert.Equal((0, 0), await CountAsync());

        await _floor.AsOwnerAsync("DROP TRIGGER tr_fail ON entry_subjects"); // and it was that alone
        (await _floor.InsistAsync(Ann, Fill(K3, NewId()))).Stored();
        (await _floor.SendAsync(Received(NewId()))).Stored();
        Assert.Equal((2, 0), await CountAsync());
    }

    [Fact]
    public async Task A_batch_written_on_its_own_is_one_that_no_entry_brought()
    {
        await _floor.AskAsync<int?>(
            "INSERT INTO batches (id, number, version, thing) VALUES ($1, 1, 1, '{}')",
            NewId()
        );

        Assert.Equal((1, 1), await CountAsync());
    }

    [Fact]
    public async Task Nobody_sees_a_batch_before_its_entry()
    {
        await using var held = await Holder.OfAsync(_floor.Database, "LOCK TABLE tank_occupancies IN EXCLUSIVE MODE");

        var fill = _floor.InsistAsync(Ann, Fill(K3, NewId())); // its batch and entry are written, and wait

        Assert.Equal(1, await _floor.WaitingAsync(1));
        Assert.Equal((0, 0), await CountAsync());
        await held.LetGoAsync();
        (await fill).Stored();
        Assert.Equal((1, 0), await CountAsync());
    }

    private async Task<(int All, int Alone)> CountAsync()
    {
        const string Things = "(SELECT id FROM batches UNION ALL SELECT id FROM cultures) t";
        var all = await _floor.AskAsync<long>($"SELECT count(*) FROM {Things}");
        var alone = await _floor.AskAsync<long>(
            $"SELECT count(*) FROM {Things} WHERE NOT EXISTS (SELECT FROM entry_subjects s WHERE s.subject_id = t.id)"
        );
        return ((int)all, (int)alone);
    }
}
