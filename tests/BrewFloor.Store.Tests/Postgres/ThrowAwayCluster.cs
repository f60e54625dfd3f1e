using BrewFloor.Store.PrivateServer;

namespace BrewFloor.Store.Tests.Postgres;

/// <summary>A private server with fsync off in a temporary folder, for machines without a server or a container engine.</summary>
internal sealed class ThrowAwayCluster : IAsyncDisposable
{
    private const string Prefix = "brewfloor-test-";

    private readonly string _folder;
    private readonly PrivateCluster _cluster;

    private ThrowAwayCluster(string folder, PrivateCluster cluster) => (_folder, _cluster) = (folder, cluster);

    public static async Task<(IAsyncDisposable?, string)> StartAsync(CancellationToken stop)
    {
        await SweepAsync(stop);
        var folder = Directory.CreateDirectory($"{Scratch.Root}/{Prefix}{Guid.CreateVersion7():N}").FullName;
        var options = PrivateServerOptions.FromEnvironment(folder);
        var cluster = await PrivateCluster.StartAsync(options, ClusterSettings.ThrowAway, stop);
        return (new ThrowAwayCluster(folder, cluster), cluster.Connections.Owner);
    }

    public async ValueTask DisposeAsync()
    {
        await _cluster.DisposeAsync();
        Directory.Delete(_folder, recursive: true);
    }

    // What a test run that was killed left behind: its server lives on, but nobody holds its folder.
    private static async Task SweepAsync(CancellationToken stop)
    {
        foreach (var left in Directory.GetDirectories(Scratch.Root, Prefix + "*").Where(IsOld))
        {
            try
            {
                await using (await PrivateCluster.StartAsync(PrivateServerOptions.FromEnvironment(left), stop)) { }
                Directory.Delete(left, recursive: true);
            }
            catch (PrivateServerProblem)
            {
                // In use by another run, or another user's.
            }
        }
    }

    private static bool IsOld(string folder) =>
        TimeProvider.System.GetUtcNow().UtcDateTime - Directory.GetCreationTimeUtc(folder) > TimeSpan.FromMinutes(2);
}
