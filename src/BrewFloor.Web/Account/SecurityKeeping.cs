using System.Globalization;
using BrewFloor.Store.People;
using BrewFloor.Store.PrivateServer;
using BrewFloor.Web.Hosting;
using Npgsql;

namespace BrewFloor.Web.Account;

/// <summary>How long the security log is kept.</summary>
public sealed record SecurityKept(TimeSpan For)
{
    public const string Variable = "BREWFLOOR_SECURITY_LOG_DAYS";

    private const int Usual = 365;
    private const int Fewest = 30;
    private const int Most = 3650;

    /// <exception cref="StartProblemException">Not a number of days that is allowed.</exception>
    public static SecurityKept Read(string? text) =>
        string.IsNullOrWhiteSpace(text) ? new(TimeSpan.FromDays(Usual))
        : int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var days)
        && days is >= Fewest and <= Most
            ? new(TimeSpan.FromDays(days))
        : throw new StartProblemException($"{Variable} must be {Fewest} to {Most}, not \"{text}\".");
}

/// <summary>Lets go what is older, once an hour.</summary>
internal sealed partial class SecurityKeeping(
    SecurityKept kept,
    FloorDatabase database,
    Readiness readiness,
    TimeProvider clock,
    ILogger<SecurityKeeping> logger
) : BackgroundService
{
    private static readonly TimeSpan Every = TimeSpan.FromHours(1);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        using var timer = new PeriodicTimer(Every, clock);
        try
        {
            while (await timer.WaitForNextTickAsync(stoppingToken))
            {
                await LookAsync(stoppingToken);
            }
        }
        catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
        {
            // Stopping.
        }
    }

    private async Task LookAsync(CancellationToken stop)
    {
        if (!readiness.IsReady)
        {
            return;
        }

        try
        {
            var owner = (await database.ConnectionsAsync(stop)).Owner;
            await SecurityBook.ForgetAsync(owner, kept.For, stop);
        }
        catch (NpgsqlException e)
        {
            LogFailed(e.Message); // the next hour tries again
        }
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "Old lines of the security log could not be let go: {Reason}")]
    private partial void LogFailed(string reason);
}
