using System.Diagnostics;
using BrewFloor.Store.PrivateServer;
using Npgsql;

namespace BrewFloor.Benchmarks.Drills;

/// <summary>PostgreSQL is killed under the living app: its head, or some of its processes at random, while twenty writers log.</summary>
internal static class PostgresDrill
{
    public const string Name = "postgres";
    public const int InFull = 200;
    public static readonly TimeSpan Limit = TimeSpan.FromSeconds(30);

    private const int LongestPeaceMs = 500;

    /// <param name="under">Where the data folder is made.</param>
    public static async Task<Outcome> RunAsync(int kills, int seed, string under, CancellationToken stop)
    {
        var published = await PublishedApp.FolderAsync(stop);
        using var floor = await DrillFloor.MakeAsync(under, stop);
        var port = AppProcess.FreePort();
        using var http = floor.Http(port);
        using var app = AppProcess.Start(published, floor.Folder, port);
        await app.ReadyAsync(http, stop);
        await using var crew = Crew.Begin(floor, seed, http, stop);
        await crew.Ledger.SinceAsync(0, Limit, stop);
        var back = new List<TimeSpan>();
        var random = new Random(seed);
        var heads = 0;
        for (var kill = 0; kill < kills; kill++)
        {
            await Task.Delay(random.Next(LongestPeaceMs), stop);
            var isHead = random.Next(2) == 0;
            heads += isHead ? 1 : 0;
            var (killed, all) = Break(floor.Folder, isHead, random);
            back.Add(await HealedAsync(floor.Folder, killed, all, http, crew.Ledger, stop));
        }

        await crew.FinishAsync();
        var lived = app.IsRunning;
        await app.StopAsync(stop);
        var outcome = await ReckonAsync(kills, seed, floor, crew, back, stop);
        return outcome with
        {
            Wrong = lived ? outcome.Wrong : [.. outcome.Wrong, $"The app ended: {app.LastWords()}"],
            Also =
            [
                $"{heads} of the {kills} kills hit its head, the others up to three of its processes.",
                .. outcome.Also,
            ],
        };
    }

    /// <returns>When, and everything that ran then: PostgreSQL starts all of it anew after either.</returns>
    private static (long At, IReadOnlyList<int> All) Break(string folder, bool isHead, Random random)
    {
        var postmaster = PostgresProcesses.Postmaster(folder) ?? throw new InvalidOperationException("It is down.");
        int[] backends = [.. PostgresProcesses.Backends(postmaster)];
        random.Shuffle(backends);
        var at = Stopwatch.GetTimestamp();
        foreach (var pid in isHead ? [postmaster] : backends.Take(random.Next(1, 4)))
        {
            PostgresProcesses.Kill(pid);
        }

        return (at, isHead ? [postmaster, .. backends] : backends);
    }

    // Served again: what ran before is gone, something sent after that is acknowledged, and the app says that it is ready.
    private static async Task<TimeSpan> HealedAsync(
        string folder,
        long killed,
        IReadOnlyList<int> before,
        HttpClient http,
        Ledger ledger,
        CancellationToken stop
    )
    {
        bool IsOver() => Stopwatch.GetElapsedTime(killed) > 2 * Limit;
        while ((before.Any(PostgresProcesses.Lives) || PostgresProcesses.Postmaster(folder) is null) && !IsOver())
        {
            await Task.Delay(5, stop);
        }

        await ledger.SinceAsync(Stopwatch.GetTimestamp(), 2 * Limit, stop);
        while (!await AppProcess.IsReadyAsync(http, stop) && !IsOver())
        {
            await Task.Delay(5, stop);
        }

        return Stopwatch.GetElapsedTime(killed);
    }

    private static async Task<Outcome> ReckonAsync(
        int kills,
        int seed,
        DrillFloor floor,
        Crew crew,
        List<TimeSpan> back,
        CancellationToken stop
    )
    {
        await using var database = await floor.BorrowAsync(stop);
        var ledger = crew.Ledger;
        var found = await Reckoning.OfAsync(ledger.Acknowledged.Values, ledger.Requests, crew.Seen, database, stop);
        var damage = await DamageAsync(database, stop);
        var missed = await Controls.MissedAsync(crew, database, stop);
        return new(
            seed,
            kills,
            ledger.Count,
            ledger.Failures,
            [.. ledger.Wrong, .. damage ?? []],
            found,
            back,
            Limit,
            missed
        )
        {
            Also =
            [
                damage is null
                    ? "pg_amcheck is not installed: not run."
                    : "pg_amcheck looked at every table and index.",
            ],
        };
    }

    /// <summary>What PostgreSQL's own check says of tables and indexes; null where it isn't installed.</summary>
    private static async Task<string[]?> DamageAsync(BorrowedDatabase database, CancellationToken stop)
    {
        var connection = new NpgsqlConnectionStringBuilder(database.Connections.Owner);
        var programs = await PostgresPrograms.FindAsync(database.Options, "pg_ctl", dataOf: null, stop);
        if (!File.Exists(programs["pg_amcheck"]))
        {
            return null;
        }

        string[] arguments =
        [
            "--install-missing",
            "--heapallindexed",
            "-h",
            connection.Host!,
            "-U",
            connection.Username!,
            connection.Database!,
        ];
        var ran = await Account.ForPostgres(database.Options).RunAsync(programs["pg_amcheck"], arguments, stop);
        return ran.IsDone ? [] : [$"pg_amcheck: {ran.Output}{ran.Errors}"];
    }
}
