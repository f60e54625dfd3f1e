using BrewFloor.Store.Log;
using BrewFloor.Store.PrivateServer;
using Npgsql;

namespace BrewFloor.Store.Backups;

/// <summary>Tries a backup out: restores it beside the floor, brings it up to date, folds the log anew, and compares.</summary>
public sealed class BackupProof(DatabaseAddress address)
{
    // Made anew by the refold, and compared by what they say.
    private static readonly string[] Folded = ["states", "snapshots", "handed_over"];

    /// <exception cref="PrivateServerProblem">It could not be tried, or it is not what was backed up.</exception>
    public async Task ProveAsync(string file, Passphrase passphrase, CancellationToken stop)
    {
        var contents = await SealedContents.CheckAsync(file, passphrase, stop);
        await using var database = await BorrowedDatabase.FromAsync(address, stop);
        var programs = await DumpPrograms.ForAsync(database, stop);
        var folder = (address as DatabaseAddress.InFolder)?.Options.Folder;
        await using var scratch = await ScratchDatabase.MakeAsync(database.Connections.Owner, folder, stop);
        await SealedRestore.ReadIntoAsync(scratch.Owner, programs, files: null, file, passphrase, stop);
        await CompareAsync(file, contents, scratch.Owner, stop);
    }

    private static async Task CompareAsync(
        string file,
        SealedContents contents,
        string restored,
        CancellationToken stop
    )
    {
        DemandSame(file, contents.Tally, await Tally.AtAsync(restored, Tally.OfTablesAsync, stop), []);
        var folds = await Tally.AtAsync(restored, Tally.OfFoldsAsync, stop);
        await Migrator.MigrateAsync(restored, TimeZoneInfo.Utc.Id, stop);
        await using (var owner = NpgsqlDataSource.Create(Connections.Alone(restored).ConnectionString))
        {
            await Refolding.AllAsync(owner, stop);
        }

        DemandSame(file, folds, await Tally.AtAsync(restored, Tally.OfFoldsAsync, stop), []);
        if (
            string.Equals(
                Snapshot.KnownSchemas.Max(StringComparer.Ordinal),
                contents.Head.Schema,
                StringComparison.Ordinal
            )
        )
        {
            DemandSame(file, contents.Tally, await Tally.AtAsync(restored, Tally.OfTablesAsync, stop), Folded);
        }
    }

    private static void DemandSame(string file, Tally backedUp, Tally restored, string[] butFor)
    {
        string[] differ = [.. restored.DifferFrom(backedUp).Except(butFor, StringComparer.Ordinal)];
        if (differ.Length > 0)
        {
            throw BackupProblems.ProofDiffers(file, differ);
        }
    }
}
