using System.Diagnostics;
using System.Globalization;
using BrewFloor.Benchmarks.Drills;
using BrewFloor.Store.PrivateServer;

namespace BrewFloor.Benchmarks.Measuring;

/// <summary>The published app on data that is there: from its start to the first floor page, and the memory it has then.</summary>
internal static class StartBench
{
    private const int Starts = 5;

    public static async Task<IReadOnlyList<Measured>> RunAsync(CancellationToken stop)
    {
        var published = await PublishedApp.FolderAsync(stop);
        var folder = Directory.CreateDirectory($"/tmp/brewfloor-bench-{Guid.CreateVersion7():N}").FullName;
        try
        {
            await LoadAsync(folder, stop);
            var port = AppProcess.FreePort();
            using var visitor = new Visitor(port);
            await FirstPageAsync(published, folder, port, visitor, signsIn: true, stop);
            List<(double Seconds, double Megabytes)> starts = [];
            for (var start = 0; start < Starts; start++)
            {
                starts.Add(await FirstPageAsync(published, folder, port, visitor, signsIn: false, stop));
            }

            return
            [
                new(
                    "start to the first floor page, PostgreSQL's start included",
                    Round.Median([.. starts.Select(s => s.Seconds)]),
                    3,
                    "s"
                ),
                new(
                    "memory (RSS) after the first page, without PostgreSQL",
                    Round.Median([.. starts.Select(s => s.Megabytes)]),
                    200,
                    "MB"
                ),
            ];
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static async Task LoadAsync(string folder, CancellationToken stop)
    {
        await using var cluster = await PrivateCluster.StartAsync(PrivateServerOptions.FromEnvironment(folder), stop);
        var generator = new Generator(200, 20_000, TimeProvider.System.GetUtcNow());
        await new LoadedFloor(cluster.Connections, generator).LoadAsync(stop);
        Npgsql.NpgsqlConnection.ClearAllPools();
    }

    private static async Task<(double Seconds, double Megabytes)> FirstPageAsync(
        string published,
        string folder,
        int port,
        Visitor visitor,
        bool signsIn,
        CancellationToken stop
    )
    {
        var began = Stopwatch.GetTimestamp();
        using var app = AppProcess.Start(published, folder, port);
        await app.ReadyAsync(visitor.Http, stop);
        if (signsIn)
        {
            await visitor.SignInAsync(LoadedFloor.OwnerName, LoadedFloor.Password);
        }

        await visitor.ReadAsync("/");
        var took = Stopwatch.GetElapsedTime(began).TotalSeconds;
        var megabytes = MegabytesOf(app.Id);
        await app.StopAsync(stop);
        return (took, megabytes);
    }

    private static double MegabytesOf(int pid)
    {
        var line = File.ReadLines($"/proc/{pid.ToString(CultureInfo.InvariantCulture)}/status")
            .First(l => l.StartsWith("VmRSS:", StringComparison.Ordinal));
        return double.Parse(line.Split(' ', StringSplitOptions.RemoveEmptyEntries)[1], CultureInfo.InvariantCulture)
            / 1024;
    }
}
