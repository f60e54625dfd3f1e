using System.Diagnostics;
using Npgsql;

namespace BrewFloor.Store.PrivateServer;

/// <summary>One PostgreSQL server of the app's own, in a data folder, reached through a socket there and nowhere else.</summary>
/// <remarks>
/// The server is no child that dies with the app: when the app is killed it lives on, and the next start attaches to it.
/// </remarks>
public sealed class PrivateCluster : IAsyncDisposable
{
    private const int PatienceSeconds = 60;
    private static readonly TimeSpan BetweenLooks = TimeSpan.FromMilliseconds(50);

    private readonly DataFolder _folder;
    private readonly Account _postgres;
    private readonly PostgresPrograms _programs;
    private readonly FileStream _lock;
    private readonly IReadOnlyList<string> _further;

    private PrivateCluster(
        DataFolder folder,
        Account postgres,
        PostgresPrograms programs,
        FileStream taken,
        IReadOnlyList<string> further
    ) => (_folder, _postgres, _programs, _lock, _further) = (folder, postgres, programs, taken, further);

    /// <summary>How the app and its migrations reach it.</summary>
    public Connections Connections => SocketConnections.In(_folder);

    /// <summary>A server was running already, left by an app that was killed.</summary>
    public bool WasRunning { get; private set; }

    /// <summary>The server's process runs, whether it answers or not.</summary>
    public bool IsAlive => Postmaster.Read(_folder.Data) is { IsAlive: true };

    /// <summary>Takes the folder, makes a database there when there is none, and starts the server or attaches to it.</summary>
    /// <exception cref="PrivateServerProblem">It cannot: why, and what to do.</exception>
    public static Task<PrivateCluster> StartAsync(PrivateServerOptions options, CancellationToken stop) =>
        StartAsync(options, [], stop);

    /// <summary>How to reach a server that runs in the folder; <see langword="null"/> when none does.</summary>
    internal static Connections? RunningIn(PrivateServerOptions options)
    {
        var folder = new DataFolder(options.Folder);
        return Postmaster.Read(folder.Data) is { IsAlive: true } ? SocketConnections.In(folder) : null;
    }

    internal static async Task<PrivateCluster> StartAsync(
        PrivateServerOptions options,
        IReadOnlyList<string> further,
        CancellationToken stop
    )
    {
        var folder = new DataFolder(options.Folder);
        var postgres = Account.ForPostgres(options);
        var taken = folder.Take();
        try
        {
            if (!await postgres.ExistsAsync(stop))
            {
                throw ServerProblems.UserMissing(options.User);
            }

            (int, string)? dataOf = folder.MadeBy() is { } made ? (made, folder.Root) : null;
            var programs = await PostgresPrograms.FindAsync(options, "initdb", dataOf, stop);
            var cluster = new PrivateCluster(folder, postgres, programs, taken, further);
            await folder.PrepareAsync(postgres, stop);
            await new FreshCluster(folder, postgres, programs).MakeIfNoneAsync(stop);
            await cluster.BringUpAsync(stop);
            return cluster;
        }
        catch (IOException e) when (FailedPrograms.IsDiskFull(e))
        {
            await taken.DisposeAsync();
            throw FailedPrograms.DiskFull(folder);
        }
        catch
        {
            await taken.DisposeAsync();
            throw;
        }
    }

    /// <summary>Sees to it that the server runs and answers: nothing to do, wait, attach or start.</summary>
    /// <exception cref="PrivateServerProblem">It cannot: why, and what to do.</exception>
    public async Task BringUpAsync(CancellationToken stop)
    {
        WasRunning = IsAlive;
        if (WasRunning && await AnswersAsync(stop))
        {
            return;
        }

        if (IsAlive)
        {
            await StopAsync(stop);
        }

        await StartServerAsync(stop);
        try
        {
            await SocketConnections.PrepareAsync(_folder, stop);
        }
        catch
        {
            await StopAsync(CancellationToken.None);
            throw;
        }
    }

    /// <summary>Stops the server; open transactions are rolled back, everything committed is kept.</summary>
    public async Task StopAsync(CancellationToken stop)
    {
        string[] arguments = ["stop", "-s", "-w", "-t", "60", "-m", "fast", "-D", _folder.Data];
        var ran = await _postgres.RunAsync(_programs["pg_ctl"], arguments, stop);
        if (!ran.IsDone && IsAlive)
        {
            throw ServerProblems.DidNotStart("pg_ctl stop", _folder.Log, ran.Errors.Trim());
        }
    }

    /// <summary>Stops the server and lets go of the folder.</summary>
    public async ValueTask DisposeAsync()
    {
        if (!_lock.CanWrite)
        {
            return; // no longer ours: another app may have the folder by now, and its server
        }

        try
        {
            await StopAsync(CancellationToken.None);
        }
        finally
        {
            await LetGoAsync();
        }
    }

    /// <summary>Lets go of the folder and leaves the server running, as when the app is killed.</summary>
    internal ValueTask LetGoAsync() => _lock.DisposeAsync();

    // Somebody swept its socket away: nobody will ever reach it.
    private bool IsOutOfReach =>
        !_folder.HasSocket && Postmaster.Read(_folder.Data) is { IsAlive: true, SaysReady: true };

    private async Task StartServerAsync(CancellationToken stop)
    {
        await WriteSettingsAsync(stop);
        var watch = Stopwatch.StartNew();
        while (true)
        {
            if (Postmaster.Read(_folder.Data) is { } dead)
            {
                await dead.ForgetAsync(_postgres, _folder.Sockets, stop);
            }

            var before = _folder.EndOfLog();
            string[] arguments = ["start", "-s", "-w", "-t", "60", "-D", _folder.Data, "-l", _folder.Log];
            var ran = await _postgres.RunAsync(_programs["pg_ctl"], arguments, stop);
            if (ran.IsDone || (IsAlive && await AnswersAsync(stop)))
            {
                return;
            }

            var log = _folder.LogSince(before);
            if (!OrphansAreLeaving(log) || watch.Elapsed.TotalSeconds > PatienceSeconds)
            {
                throw FailedPrograms.Explain("pg_ctl start", ran, log, _folder);
            }

            await Task.Delay(BetweenLooks, stop);
        }
    }

    private async Task WriteSettingsAsync(CancellationToken stop)
    {
        var file = Path.Combine(_folder.Data, ClusterSettings.FileName);
        var settings = ClusterSettings.For(_folder.Sockets, _further);
        if (
            !File.Exists(file)
            || !string.Equals(await File.ReadAllTextAsync(file, stop), settings, StringComparison.Ordinal)
        )
        {
            await _postgres.WriteAsync(file, settings, stop);
        }
    }

    // Workers of a killed server end on their own, but not at once.
    private static bool OrphansAreLeaving(string log) =>
        log.Contains("pre-existing shared memory block", StringComparison.Ordinal);

    // After a crash or a power cut it may be recovering: as long as it lives it is waited for.
    private async Task<bool> AnswersAsync(CancellationToken stop)
    {
        var watch = Stopwatch.StartNew();
        while (IsAlive)
        {
            try
            {
                await SocketConnections.PrepareAsync(_folder, stop);
                return true;
            }
            catch (NpgsqlException) when (IsOutOfReach)
            {
                return false;
            }
            catch (NpgsqlException) when (watch.Elapsed.TotalSeconds < PatienceSeconds)
            {
                await Task.Delay(BetweenLooks, stop);
            }
            catch (NpgsqlException)
            {
                throw ServerProblems.NotAnswering(_folder.Root, PatienceSeconds);
            }
        }

        return false;
    }
}
