using BrewFloor.Store.PrivateServer;
using Npgsql;

namespace BrewFloor.Store.Backups;

/// <summary>A backup that was made and tried out.</summary>
/// <param name="Note">For the book.</param>
/// <param name="Tally">What is in it.</param>
/// <param name="Problem">Why it is not proven, for whoever runs the app; <see langword="null"/>: it is.</param>
public sealed record Taken(BackupNote Note, Tally Tally, string? Problem);

/// <summary>Makes a backup and has it prove itself.</summary>
public sealed class BackupRound(DatabaseAddress address, string dataFolder, TimeProvider clock)
{
    /// <exception cref="PrivateServerProblem">None was made: why, and what to do.</exception>
    public async Task<Taken> TakeAsync(string file, Passphrase passphrase, bool isNightly, CancellationToken stop)
    {
        var made = await new SealedBackup(address, dataFolder).BackupAsync(file, passphrase, stop);
        var (code, problem) = await ProveAsync(made.File, passphrase, stop);
        DateTimeOffset? proven = code is null ? clock.GetUtcNow() : null;
        return new(new(made.At, made.File, made.Bytes, proven, code, isNightly), made.Tally, problem);
    }

    // Whatever keeps it from being proven, the backup itself was made and stays.
    private async Task<(string? Code, string? Problem)> ProveAsync(
        string file,
        Passphrase passphrase,
        CancellationToken stop
    )
    {
        try
        {
            await new BackupProof(address).ProveAsync(file, passphrase, stop);
            return (null, null);
        }
        catch (PrivateServerProblem e)
        {
            return (e.Code, e.Message);
        }
        catch (Exception e) when (e is NpgsqlException or IOException)
        {
            return ("proof-broke-off", e.Message);
        }
    }
}
