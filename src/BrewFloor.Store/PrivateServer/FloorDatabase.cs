using Microsoft.Extensions.Logging;
using Npgsql;

namespace BrewFloor.Store.PrivateServer;

/// <summary>The database the floor's log is in, while the app runs: brought up or waited for, watched, and healed.</summary>
public sealed partial class FloorDatabase(DatabaseAddress address, TimeProvider time, ILogger<FloorDatabase> logger)
    : IAsyncDisposable
{
    private static readonly TimeSpan BetweenLooks = TimeSpan.FromSeconds(1);
    private static readonly TimeSpan LongestWait = TimeSpan.FromSeconds(10);

    private readonly TaskCompletionSource<Connections> _reached = new(
        TaskCreationOptions.RunContinuationsAsynchronously
    );
    private readonly SemaphoreSlim _doubts = new(0); // never disposed: a request may still doubt while the app ends
    private PrivateCluster? _cluster;
    private Probe? _probe;
    private Action? _whenBack;
    private volatile Reach _reach = new(IsReachable: false, LastAt: null, Problem: null);

    /// <summary>It answered when it was last asked, at most some seconds ago.</summary>
    public bool IsReachable => _reach.IsReachable;

    /// <summary>When it last answered.</summary>
    public DateTimeOffset? LastReachableAt => _reach.LastAt;

    /// <summary>All of that at one moment, and why it cannot be reached.</summary>
    public Reach Reach => _reach;

    /// <summary>The ways in, as soon as the database has answered for the first time.</summary>
    public Task<Connections> ConnectionsAsync(CancellationToken stop) => _reached.Task.WaitAsync(stop);

    /// <summary>The way in for the app, as soon as the database has answered for the first time.</summary>
    public async Task<string> ConnectionStringAsync(CancellationToken stop) =>
        (await ConnectionsAsync(stop)).Application;

    /// <summary>Brings up a private server; a given one is only remembered, and waited for by <see cref="WatchAsync"/>.</summary>
    /// <exception cref="PrivateServerProblem">The private server cannot be brought up: why, and what to do.</exception>
    public async Task StartAsync(CancellationToken stop)
    {
        if (address is DatabaseAddress.InFolder(var options))
        {
            _cluster = await PrivateCluster.StartAsync(options, stop);
            LogUp(options.Folder, _cluster.WasRunning ? "attached to the server left running" : "started");
        }

        _probe = new(Connections.Owner);
        await LookAsync(stop);
    }

    /// <summary>Done each time it answers again after it did not: connections from before are dead, and pools of them should be emptied.</summary>
    public void WhenBack(Action then) => _whenBack += then;

    /// <summary>Somebody found it broken: it is looked at now, not at the next second.</summary>
    public void Doubt()
    {
        if (IsReachable && _doubts.CurrentCount == 0)
        {
            _doubts.Release();
        }
    }

    /// <summary>Looks every second whether the database answers, until told to stop; brings a private server up again.</summary>
    public async Task WatchAsync(CancellationToken stop)
    {
        var wait = BetweenLooks;
        while (!stop.IsCancellationRequested)
        {
            await ((Task)_doubts.WaitAsync(wait, stop)).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            await LookAsync(stop);
            wait = IsReachable ? BetweenLooks : TimeSpan.FromTicks(Math.Min(wait.Ticks * 2, LongestWait.Ticks));
        }
    }

    /// <summary>Stops a private server; a given one is left alone.</summary>
    public async ValueTask DisposeAsync()
    {
        if (_probe is { } probe)
        {
            await probe.DisposeAsync();
        }

        if (_cluster is { } cluster)
        {
            await cluster.DisposeAsync();
        }
    }

    private Connections Connections => address is DatabaseAddress.Given(var given) ? given : _cluster!.Connections;

    // The boundary of this loop: whatever went wrong is said, and tried again; only an end that was asked for ends it.
    private async Task LookAsync(CancellationToken stop)
    {
        try
        {
            await AskOrHealAsync(stop);
            await WelcomeAsync(stop);
            _reach = new(IsReachable: true, time.GetUtcNow(), Problem: null);
        }
        catch (Exception) when (stop.IsCancellationRequested)
        {
            // Stopping: what fails now fails because of that.
        }
        catch (Exception e)
        {
            Lose(e);
        }
    }

    private void Lose(Exception e)
    {
        if (!string.Equals(_reach.Problem, e.Message, StringComparison.Ordinal))
        {
            LogLost(e.Message);
        }

        _reach = _reach with { IsReachable = false, Problem = e.Message };
    }

    private async Task AskOrHealAsync(CancellationToken stop)
    {
        try
        {
            await _probe!.AskAsync(stop);
        }
        catch (NpgsqlException e) when (_cluster is not null)
        {
            Lose(e);
            await _cluster.BringUpAsync(stop);
            await _probe!.AskAsync(stop);
        }
    }

    private async Task WelcomeAsync(CancellationToken stop)
    {
        if (IsReachable)
        {
            return;
        }

        if (!_reached.Task.IsCompleted)
        {
            await LetInAsync(stop);
        }

        // Connections from before the break are dead, and only found out one by one, each by a failure.
        // A pool of a data source's own is emptied by none but its owner.
        NpgsqlConnection.ClearAllPools();
        _whenBack?.Invoke();
        LogReached();
    }

    private async Task LetInAsync(CancellationToken stop)
    {
        if (_cluster is null)
        {
            await ApplicationRole.EnsureAsync(Connections, stop);
        }

        _reached.TrySetResult(Connections);
    }

    [LoggerMessage(Level = LogLevel.Information, Message = "Private database in {Folder}: {How}.")]
    private partial void LogUp(string folder, string how);

    [LoggerMessage(Level = LogLevel.Information, Message = "The database answers.")]
    private partial void LogReached();

    [LoggerMessage(Level = LogLevel.Warning, Message = "The database cannot be reached, trying again: {Problem}")]
    private partial void LogLost(string problem);
}
