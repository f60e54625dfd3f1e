using System.Diagnostics;
using BrewFloor.Store.PrivateServer;
using BrewFloor.Store.Tests.Postgres;
using Npgsql;

namespace BrewFloor.Store.Tests.PrivateServer;

/// <summary>A data folder of a test's own, and the words the tests of the private server are written in.</summary>
public sealed class FolderUnderTest : IAsyncDisposable
{
    public FolderUnderTest()
        : this(Directory.CreateDirectory($"{Scratch.Root}/bf-{Guid.CreateVersion7():N}").FullName) { }

    public FolderUnderTest(string root) => Root = root;

    /// <summary>Swept at the end, with all that is in it.</summary>
    public string Root { get; }

    public string Path => $"{Root}/data";

    public string Data => $"{Path}/pgdata";

    public PrivateServerOptions Options => PrivateServerOptions.FromEnvironment(Path);

    public int Pid => Postmaster.Read(Data) is { IsAlive: true, Pid: var pid } ? pid : 0;

    public static CancellationToken Stop => TestContext.Current.CancellationToken;

    public Task<PrivateCluster> StartAsync() => PrivateCluster.StartAsync(Options, Stop);

    /// <summary>Starting is refused, and this is the code.</summary>
    public async Task<PrivateServerProblem> RefusesAsync(PrivateServerOptions? options = null) =>
        await Assert.ThrowsAsync<PrivateServerProblem>(() => PrivateCluster.StartAsync(options ?? Options, Stop));

    public static async Task<object?> AskAsync(string connection, string statement)
    {
        await using var open = Connections.Alone(connection);
        await open.OpenAsync(Stop);
        await using var command = new NpgsqlCommand(statement, open);
        return await command.ExecuteScalarAsync(Stop);
    }

    public void KillServer() => Kill(Pid);

    public static void Kill(int pid)
    {
        using var process = Process.GetProcessById(pid);
        process.Kill();
    }

    public static async Task EventuallyAsync(Func<bool> holds, int seconds = 30)
    {
        var watch = Stopwatch.StartNew();
        while (!holds())
        {
            Assert.True(watch.Elapsed.TotalSeconds < seconds, $"not within {seconds} s");
            await Task.Delay(TimeSpan.FromMilliseconds(20), Stop);
        }
    }

    public async ValueTask DisposeAsync()
    {
        if (Pid is not 0 and var pid)
        {
            Kill(pid);
            await EventuallyAsync(() => Pid == 0);
        }

        Directory.Delete(Root, recursive: true);
    }
}
