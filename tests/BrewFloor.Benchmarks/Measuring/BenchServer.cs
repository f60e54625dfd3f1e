using System.Diagnostics;
using System.Globalization;
using BrewFloor.Store.PrivateServer;
using Npgsql;

namespace BrewFloor.Benchmarks.Measuring;

/// <summary>A private PostgreSQL as the app runs it, fsync and all, with a database for each length of log.</summary>
internal sealed class BenchServer : IAsyncDisposable
{
    private readonly string _folder;
    private readonly PrivateCluster _cluster;
    private readonly Dictionary<string, LoadedFloor> _floors = new(StringComparer.Ordinal);

    private BenchServer(string folder, PrivateCluster cluster) => (_folder, _cluster) = (folder, cluster);

    public static async Task<BenchServer> StartAsync(CancellationToken stop)
    {
        var folder = Directory.CreateDirectory($"/tmp/brewfloor-bench-{Guid.CreateVersion7():N}").FullName;
        return new(folder, await PrivateCluster.StartAsync(PrivateServerOptions.FromEnvironment(folder), stop));
    }

    /// <summary>A floor of so many tanks and entries; loaded when first asked for.</summary>
    public async Task<LoadedFloor> FloorAsync(int tanks, int entries, CancellationToken stop)
    {
        var name = string.Create(CultureInfo.InvariantCulture, $"floor_{tanks}_{entries}");
        if (_floors.TryGetValue(name, out var loaded))
        {
            return loaded;
        }

        var watch = Stopwatch.StartNew();
        await using (var owner = Connections.Alone(_cluster.Connections.Owner))
        {
            await owner.OpenAsync(stop);
            await using var make = new NpgsqlCommand($"CREATE DATABASE {name}", owner);
            await make.ExecuteNonQueryAsync(stop);
        }

        loaded = new(_cluster.Connections.To(name), new(tanks, entries, TimeProvider.System.GetUtcNow()));
        await loaded.LoadAsync(stop);
        Console.WriteLine($"  loaded {entries:N0} entries of {tanks} tanks in {watch.Elapsed.TotalSeconds:0} s");
        return _floors[name] = loaded;
    }

    public async ValueTask DisposeAsync()
    {
        NpgsqlConnection.ClearAllPools();
        await _cluster.DisposeAsync();
        Directory.Delete(_folder, recursive: true);
    }
}
