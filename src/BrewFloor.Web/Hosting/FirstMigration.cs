using BrewFloor.Store;
using BrewFloor.Store.House;
using BrewFloor.Store.People;
using BrewFloor.Store.PrivateServer;
using BrewFloor.Web.Account;

namespace BrewFloor.Web.Hosting;

/// <summary>Whether pages may be served: the database answers, and it has been migrated by this program.</summary>
public sealed class Readiness(FloorDatabase database)
{
    private volatile bool _isMigrated;
    private volatile bool _isPaused;

    public bool IsReady => Awaits is null;

    /// <summary>What is waited for; null: nothing.</summary>
    public Awaited? Awaits =>
        _isPaused ? Awaited.Restore
        : !database.IsReachable ? Awaited.Database
        : !_isMigrated ? Awaited.Tables
        : null;

    public DateTimeOffset? LastReachedAt => database.LastReachableAt;

    /// <summary>The way in for the app, known once the database has answered.</summary>
    public string Connection { get; private set; } = "";

    /// <summary>Pages and loops wait until it is disposed.</summary>
    internal IDisposable Pause()
    {
        _isPaused = true;
        return new Paused(this);
    }

    private sealed class Paused(Readiness readiness) : IDisposable
    {
        public void Dispose() => readiness._isPaused = false;
    }

    internal void Reached(string connection) => Connection = connection;

    internal void Migrated() => _isMigrated = true;
}

/// <summary>What pages wait for.</summary>
public enum Awaited
{
    Database, // to answer
    Tables, // to be those of this version
    Restore, // of a backup, to be over
}

/// <summary>Migrates the database as soon as it answers, and says how to begin; pages wait for it.</summary>
public sealed partial class FirstMigration(
    FloorDatabase database,
    Readiness readiness,
    StartOptions options,
    IServiceProvider services,
    IHostApplicationLifetime life,
    ILogger<FirstMigration> logger
) : BackgroundService
{
    private static readonly TimeSpan BeforeTryingAgain = TimeSpan.FromSeconds(1);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        try
        {
            while (!await TryAsync(stoppingToken))
            {
                await Task.Delay(BeforeTryingAgain, stoppingToken);
            }
        }
        catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
        {
            // Stopped before it was ready.
        }
        catch (Exception e)
        {
            // Half a floor is no floor: what cannot be migrated is not served.
            LogNotMigrated(e, e.Message);
            Environment.ExitCode = 1;
            life.StopApplication();
        }
    }

    // Each step may be done again from the start; a database that was lost meanwhile comes back.
    private async Task<bool> TryAsync(CancellationToken stop)
    {
        try
        {
            var connections = await database.ConnectionsAsync(stop);
            readiness.Reached(connections.Application);
            await Migrator.MigrateAsync(connections.Owner, TimeZoneInfo.Local.Id, stop);
            await services.GetRequiredService<HouseKeeping>().RulesAsync(stop);
            await FillAsync(stop);
            readiness.Migrated();
            await WelcomeAsync(stop);
            return true;
        }
        catch (Exception e) when (FloorAway.IsOutOfReach(e) && !stop.IsCancellationRequested)
        {
            LogLost(e.Message);
            return false;
        }
    }

    private async Task FillAsync(CancellationToken stop)
    {
        if (options.IsDemo && !await ActivatorUtilities.CreateInstance<DemoFloor>(services).FillAsync(stop))
        {
            Console.WriteLine("There is something on this floor already: the demo was left out.");
        }
    }

    private async Task WelcomeAsync(CancellationToken stop)
    {
        if (!await services.GetRequiredService<FirstOwner>().ExistsAsync(stop))
        {
            Console.WriteLine(
                $"""

                This floor has no owner yet. Open /setup in a browser and type this code, good for 15 minutes:

                    {services.GetRequiredService<SetupToken>().Text}

                """
            );
        }
    }

    [LoggerMessage(
        Level = LogLevel.Warning,
        Message = "The database was lost while it was made ready, trying again: {Reason}"
    )]
    private partial void LogLost(string reason);

    [LoggerMessage(Level = LogLevel.Critical, Message = "The database cannot be used: {Reason}")]
    private partial void LogNotMigrated(Exception e, string reason);
}
