using System.Globalization;
using BrewFloor.Domain.Log;
using BrewFloor.Store.Log;
using BrewFloor.Store.PrivateServer;
using BrewFloor.Store.Tests.Postgres;
using Npgsql;

namespace BrewFloor.Store.Tests.Releases;

/// <summary>The floors that earlier releases left behind are read, migrated and folded anew to what they were.</summary>
public sealed class ReleasesTests(TestServer server)
{
    // What fold 3 tells and the dumps of fold 2 don't: for when a batch is planned; and a filling ends what
    // was read and heated before it..
    private const string SinceFold3 = "- 'planned_at' - 'temperature' - 'hot'";

    // Numbers, texts and lists as the server itself writes them.
    private const string States = $"""
        SELECT string_agg(concat_ws('|', subject_id, kind, entries, last_at, state {SinceFold3}), E'\n' ORDER BY subject_id)
        FROM states
        """;

    private const string HandedOver = """
        SELECT string_agg(concat_ws('|', entry_id, place, taker_id, giver_id, kind, value), E'\n' ORDER BY entry_id, place)
        FROM handed_over WHERE until IS NULL
        """;

    private const string Entries =
        "SELECT string_agg(concat_ws('|', seq, id, at, recorded, kind, version, payload, encode(hash, 'hex')), E'\\n' ORDER BY seq) FROM entries";

    private const string Applied = "SELECT count(*)::text FROM \"__EFMigrationsHistory\"";

    private const string First = "first"; // from before there were items, and a site's address

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private static string Folder => Path.Combine(AppContext.BaseDirectory, "releases");

    private static string FileOf(string release) => Path.Combine(Folder, release, "floor.sql");

    public static TheoryData<string> Dumps => [.. Directory.GetDirectories(Folder).Select(d => Path.GetFileName(d)!)];

    [Theory]
    [MemberData(nameof(Dumps))]
    public async Task A_floor_of_an_earlier_release_is_what_it_was(string release)
    {
        var floor = await RestoredAsync(release);
        var (states, handed, entries) = (
            await AskAsync(floor, States),
            await AskAsync(floor, HandedOver),
            await AskAsync(floor, Entries)
        );
        Assert.NotNull(states);
        Assert.NotNull(handed);

        await MigrateAndFoldAsync(floor);

        Assert.Equal(entries, await AskAsync(floor, Entries));
        Assert.Equal(states, await AskAsync(floor, States));
        Assert.Equal(handed, await AskAsync(floor, HandedOver));
    }

    [Theory]
    [MemberData(nameof(Dumps))]
    public async Task It_holds_what_is_hard_corrected_struck_and_late_entries_and_hardly_a_kind_is_missing(
        string release
    )
    {
        Assert.InRange(new FileInfo(FileOf(release)).Length, 1, 300_000); // it stays for good
        var floor = await RestoredAsync(release);

        var kinds = (await AskAsync(floor, "SELECT string_agg(DISTINCT kind, ' ') FROM entries"))!.Split(' ');
        var late = await AskAsync(
            floor,
            "SELECT count(*)::text FROM entries e WHERE EXISTS (SELECT FROM entries o WHERE o.seq < e.seq AND o.at > e.at)"
        );

        Assert.Empty(kinds.Except(EntryKinds.ByName.Keys, StringComparer.Ordinal));
        Assert.Contains("corrected", kinds);
        Assert.Contains("struck", kinds);
        Assert.NotEqual("0", late);
        Assert.InRange(kinds.Length, 53, int.MaxValue); // as many as the first release has
    }

    [Theory]
    [MemberData(nameof(Dumps))]
    public async Task A_changed_payload_is_noticed(string release)
    {
        var floor = await RestoredAsync(release);
        var states = await AskAsync(floor, States);
        await AskAsync(floor, "DROP TRIGGER tr_entries_stay_as_written ON entries");
        var changed = await AskAsync(
            floor,
            """
            UPDATE entries SET payload = jsonb_set(payload, '{volume_l}', to_jsonb((payload ->> 'volume_l')::numeric + 1))
            WHERE id = (SELECT e.id FROM entries e JOIN entry_subjects s ON s.words_id = e.id AND s.until IS NULL
                        WHERE e.kind = 'filled' LIMIT 1)
            RETURNING id::text
            """
        );
        Assert.NotNull(changed);

        await MigrateAndFoldAsync(floor);

        Assert.NotEqual(states, await AskAsync(floor, States));
    }

    [Fact]
    public async Task A_migration_that_is_killed_half_way_goes_on_at_the_next_start()
    {
        var floor = await RestoredAsync(First);
        var (states, entries) = (await AskAsync(floor, States), await AskAsync(floor, Entries));
        await using var reader = Connections.Alone(floor);
        await reader.OpenAsync(Stop);
        await using var reading = await reader.BeginTransactionAsync(Stop);
        await reader.DoAsync("LOCK TABLE site IN ACCESS SHARE MODE", Stop); // one of the migrations gives it a column
        var killed = Migrator.MigrateAsync(floor, "Europe/Berlin", Stop);
        while (
            await AskAsync(floor, "SELECT 'waits' FROM pg_locks WHERE relation = 'site'::regclass AND NOT granted")
                is null
        )
        {
            Assert.False(killed.IsCompleted, "It went through.");
        }

        await AskAsync(
            floor,
            $"""
            SELECT pg_terminate_backend(pid, 10000)::text FROM pg_stat_activity
            WHERE datname = current_database() AND pid NOT IN (pg_backend_pid(), {reader.ProcessID})
            """
        );

        await killed.ConfigureAwait(
            ConfigureAwaitOptions.SuppressThrowing | ConfigureAwaitOptions.ContinueOnCapturedContext
        );
        Assert.True(killed.IsFaulted);
        await reading.RollbackAsync(Stop);
        var half = int.Parse((await AskAsync(floor, Applied))!, CultureInfo.InvariantCulture);
        await MigrateAndFoldAsync(floor);
        var whole = int.Parse((await AskAsync(floor, Applied))!, CultureInfo.InvariantCulture);

        Assert.InRange(half, 1, whole - 1);
        Assert.Equal(entries, await AskAsync(floor, Entries));
        Assert.Equal(states, await AskAsync(floor, States));
    }

    /// <returns>The way in as its owner.</returns>
    private async Task<string> RestoredAsync(string release)
    {
        var empty = (await server.EmptyDatabaseAsync(Stop)).Owner;
        await ReleaseDump.RestoreAsync(empty, FileOf(release));
        return empty;
    }

    private static async Task MigrateAndFoldAsync(string floor)
    {
        await Migrator.MigrateAsync(floor, "Europe/Berlin", Stop);
        await using var owner = StoreSetup.DataSource(floor);
        await Refolding.AllAsync(owner, Stop);
    }

    internal static async Task<string> StatesAsync(string floor) => (await AskAsync(floor, States))!;

    private static async Task<string?> AskAsync(string floor, string question)
    {
        await using var connection = Connections.Alone(floor);
        await connection.OpenAsync(Stop);
        await using var command = new NpgsqlCommand(question, connection);
        return await command.ExecuteScalarAsync(Stop) as string;
    }
}
