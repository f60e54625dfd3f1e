using BrewFloor.Store.PrivateServer;

namespace BrewFloor.Web.PrivateServer;

/// <summary>Brings the database up before the first request, watches it, and stops it after the last.</summary>
internal sealed class DatabaseLoop(FloorDatabase database) : BackgroundService
{
    public override async Task StartAsync(CancellationToken cancellationToken)
    {
        await database.StartAsync(cancellationToken);
        await base.StartAsync(cancellationToken);
    }

    public override async Task StopAsync(CancellationToken cancellationToken)
    {
        await base.StopAsync(cancellationToken);
        await database.DisposeAsync();
    }

    protected override Task ExecuteAsync(CancellationToken stoppingToken) => database.WatchAsync(stoppingToken);
}
