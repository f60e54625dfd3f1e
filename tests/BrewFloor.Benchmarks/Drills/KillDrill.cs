namespace BrewFloor.Benchmarks.Drills;

/// <summary>The app is killed at random moments, also while it starts, while twenty writers log; each time it is started again.</summary>
internal static class KillDrill
{
    public const string Name = "kill";
    public const int InFull = 300;
    public static readonly TimeSpan Limit = TimeSpan.FromSeconds(10);

    private const int MostWritten = 120; // entries it may acknowledge before it is killed, and so many ms more
    private const int LongestAfterMs = 20;
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(2);

    private const int LongestStartMs = 900;
    private const int OneInStart = 8; // one kill in so many falls into the start

    /// <param name="under">Where the data folder is made.</param>
    public static async Task<Outcome> RunAsync(int kills, int seed, string under, CancellationToken stop)
    {
        var published = await PublishedApp.FolderAsync(stop);
        using var floor = await DrillFloor.MakeAsync(under, stop);
        var port = AppProcess.FreePort();
        using var http = floor.Http(port);
        await using var crew = Crew.Begin(floor, seed, http, stop);
        var back = new List<TimeSpan>();
        var random = new Random(seed);
        for (var kill = 0; kill < kills; kill++)
        {
            using var app = AppProcess.Start(published, floor.Folder, port);
            if (random.Next(OneInStart) == 0)
            {
                await Task.Delay(random.Next(LongestStartMs), stop);
            }
            else
            {
                back.Add(await app.ReadyAsync(http, stop));
                await crew.Ledger.ReachesAsync(crew.Ledger.Count + random.Next(MostWritten), Patience, stop);
                await Task.Delay(random.Next(LongestAfterMs), stop);
            }

            await app.KillAsync(stop);
        }

        using (var last = AppProcess.Start(published, floor.Folder, port))
        {
            back.Add(await last.ReadyAsync(http, stop));
            await crew.FinishAsync();
            await last.StopAsync(stop);
        }

        return await ReckonAsync(kills, seed, floor, crew, back, stop);
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
        var missed = await Controls.MissedAsync(crew, database, stop);
        return new(seed, kills, ledger.Count, ledger.Failures, ledger.Wrong, found, back, Limit, missed);
    }
}
