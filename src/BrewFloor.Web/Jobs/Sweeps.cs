using BrewFloor.Store.Jobs;
using BrewFloor.Web.Hosting;
using Npgsql;

namespace BrewFloor.Web.Jobs;

/// <summary>Looks at jobs when their time comes, with no page open. What is due stands in the state, so a week of downtime costs nothing.</summary>
public sealed partial class Sweeps(
    IServiceProvider services,
    Readiness readiness,
    TimeProvider clock,
    ILogger<Sweeps> logger
) : BackgroundService
{
    private static readonly TimeSpan Every = TimeSpan.FromSeconds(15);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        using var timer = new PeriodicTimer(Every, clock);
        try
        {
            do
            {
                await SweepAsync(stoppingToken);
            } while (await timer.WaitForNextTickAsync(stoppingToken));
        }
        catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
        {
            // Stopping.
        }
    }

    private async Task SweepAsync(CancellationToken stop)
    {
        if (!readiness.IsReady)
        {
            return;
        }

        try
        {
            var jobs = services.GetRequiredService<JobKeeper>(); // not before the database is known
            while (await jobs.SweepAsync(clock.GetUtcNow(), stop) > 0)
            {
                // As long as it finds some.
            }
        }
        catch (NpgsqlException e)
        {
            LogFailed(e.Message); // the next tick tries again: nothing was half done
        }
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "Jobs were not looked at, trying again: {Reason}")]
    private partial void LogFailed(string reason);
}
