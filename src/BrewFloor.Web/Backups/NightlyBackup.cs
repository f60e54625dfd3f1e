using System.Globalization;
using BrewFloor.Store.Backups;
using BrewFloor.Store.House;
using BrewFloor.Store.PrivateServer;
using BrewFloor.Web.Hosting;
using Npgsql;

namespace BrewFloor.Web.Backups;

/// <summary>Backs up when it is time, has the backup prove itself, writes that down, and lets old ones go.</summary>
public sealed partial class NightlyBackup(
    BackupSettings settings,
    BackupRound round,
    BackupBook book,
    RulesOnHand rules,
    TimeProvider clock,
    ILogger<NightlyBackup> logger
)
{
    /// <returns>What was made or tried; <see langword="null"/>: it wasn't time, or another instance is at it.</returns>
    public async Task<BackupNote?> LookAsync(CancellationToken stop)
    {
        if (!await IsDueAsync(stop))
        {
            return null;
        }

        await using var turn = await book.TakeTurnAsync(stop);
        if (turn is null || !await IsDueAsync(stop))
        {
            return null; // another instance was quicker
        }

        var note = await TakeAsync(stop);
        await book.WriteAsync(note, stop);
        await LetGoAsync(stop);
        return note;
    }

    private async Task<bool> IsDueAsync(CancellationToken stop)
    {
        var nightly = await book.NightlyAsync(stop);
        return NightlySchedule.IsDue(
            clock.GetUtcNow(),
            rules.Zone,
            settings.Hour,
            nightly.FirstOrDefault(note => note.IsMade)?.At,
            nightly is [var last, ..] ? last.At : null
        );
    }

    private async Task<BackupNote> TakeAsync(CancellationToken stop)
    {
        var now = clock.GetUtcNow();
        var name = now.UtcDateTime.ToString("yyyyMMdd-HHmmss", CultureInfo.InvariantCulture);
        var file = Path.Combine(settings.Folder, $"brewfloor-{name}.backup");
        try
        {
            var taken = await round.TakeAsync(file, settings.Passphrase, isNightly: true, stop);
            if (taken.Problem is null)
            {
                LogProven(file, taken.Tally.Rows);
            }
            else
            {
                LogNotProven(file, taken.Problem);
            }

            return taken.Note;
        }
        catch (PrivateServerProblem e)
        {
            LogNotMade(e.Message);
            return new(now, file, Bytes: null, ProvenAt: null, e.Code, IsNightly: true);
        }
        catch (Exception e) when (e is NpgsqlException or IOException)
        {
            LogNotMade(e.Message);
            return new(now, file, Bytes: null, ProvenAt: null, "backup-broke-off", IsNightly: true);
        }
    }

    private async Task LetGoAsync(CancellationToken stop)
    {
        foreach (var old in Keeping.ToDelete(await book.NightlyAsync(stop), settings.Keep))
        {
            try
            {
                File.Delete(old.File);
                await book.StrikeOutAsync(old, stop);
            }
            catch (DirectoryNotFoundException)
            {
                await book.StrikeOutAsync(old, stop); // in a folder that is no more
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                LogStays(old.File, e.Message);
            }
        }
    }

    [LoggerMessage(Level = LogLevel.Information, Message = "Backed up to {File}: {Rows} rows, proven.")]
    private partial void LogProven(string file, long rows);

    [LoggerMessage(Level = LogLevel.Warning, Message = "Backed up to {File}, not proven: {Reason}")]
    private partial void LogNotProven(string file, string reason);

    [LoggerMessage(Level = LogLevel.Error, Message = "No backup was made, trying again in an hour: {Reason}")]
    private partial void LogNotMade(string reason);

    [LoggerMessage(Level = LogLevel.Warning, Message = "The old backup {File} could not be deleted: {Reason}")]
    private partial void LogStays(string file, string reason);
}

/// <summary>Looks every minute whether it is time.</summary>
internal sealed partial class NightlyBackups(
    IServiceProvider services,
    Readiness readiness,
    TimeProvider clock,
    ILogger<NightlyBackups> logger
) : BackgroundService
{
    private static readonly TimeSpan Every = TimeSpan.FromMinutes(1);

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
            await services.GetRequiredService<NightlyBackup>().LookAsync(stop); // not before the database is known
        }
        catch (NpgsqlException e)
        {
            LogFailed(e.Message); // the next tick tries again
        }
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "The nightly backup could not be looked after: {Reason}")]
    private partial void LogFailed(string reason);
}
