using BrewFloor.Store.PrivateServer;

namespace BrewFloor.Store.Backups;

/// <summary>A backup that was made.</summary>
/// <param name="File">Its full path.</param>
/// <param name="At">The moment it holds.</param>
/// <param name="Bytes">How large it is.</param>
/// <param name="Tally">What is in it.</param>
public sealed record BackedUp(string File, DateTimeOffset At, long Bytes, Tally Tally);

/// <summary>The whole database and the files of the data folder in one file that nobody reads without the passphrase.</summary>
/// <param name="address">Where the log is.</param>
/// <param name="dataFolder">Where the keys are.</param>
public sealed class SealedBackup(DatabaseAddress address, string dataFolder)
{
    /// <summary>Before anybody is asked for a passphrase.</summary>
    /// <exception cref="PrivateServerProblem">Something is there already.</exception>
    public static void DemandFree(string file) => PartFile.DemandFree(file);

    /// <summary>Writes a new file, also while the app runs; it has its name only once it is whole, on the disk and was read back.</summary>
    /// <exception cref="PrivateServerProblem">No backup was made: why, and what to do.</exception>
    public async Task<BackedUp> BackupAsync(string file, Passphrase passphrase, CancellationToken stop)
    {
        file = Path.GetFullPath(file);
        PartFile.DemandFree(file);
        if (address is DatabaseAddress.InFolder(var options) && new DataFolder(options.Folder).MadeBy() is null)
        {
            throw ServerProblems.NothingThere(options.Folder);
        }

        await using var database = await BorrowedDatabase.FromAsync(address, stop);
        var programs = await DumpPrograms.ForAsync(database, stop);
        using var part = PartFile.Make(file);
        var at = await SealAsync(database, programs, part, passphrase, stop);
        var tally = (await SealedContents.CheckAsync(part.Path, passphrase, stop)).Tally;
        var bytes = new FileInfo(part.Path).Length;
        await part.NameAsync(stop);
        return new(file, at, bytes, tally);
    }

    private async Task<DateTimeOffset> SealAsync(
        BorrowedDatabase database,
        PostgresPrograms programs,
        PartFile part,
        Passphrase passphrase,
        CancellationToken stop
    )
    {
        await using var snapshot = await Snapshot.TakeAsync(database.Connections.Owner, stop);
        var head = SealHead.New(snapshot.Schema, snapshot.At);
        await using var to = part.Write();
        using var writer = await SealedWriter.BeginAsync(to, head, passphrase, stop);
        var parts = new PartWriter(writer);
        using (var tally = new MemoryStream((await snapshot.TallyAsync(stop)).ToJson()))
        {
            await parts.WriteAsync(Parts.Tally, tally, stop);
        }

        await WriteFilesAsync(parts, stop);
        var ran = await DumpAsync(parts, database, programs, snapshot.Name, stop);
        if (!ran.IsDone)
        {
            throw BackupProblems.Failed("backup", part.Path, DumpPrograms.Reason(ran));
        }

        await parts.EndAsync(stop);
        await to.FlushAsync(stop);
        return head.Made;
    }

    private async Task WriteFilesAsync(PartWriter parts, CancellationToken stop)
    {
        var files = new DataFiles(dataFolder);
        foreach (var name in files.Names())
        {
            await using var content = files.Read(name);
            await parts.WriteAsync(Parts.Files + name, content, stop);
        }
    }

    // Straight from the program into the seal: the plain dump is on no disk at any time.
    private static Task<Ran> DumpAsync(
        PartWriter parts,
        BorrowedDatabase database,
        PostgresPrograms programs,
        string snapshot,
        CancellationToken stop
    ) =>
        Account.Own.PipeAsync(
            programs["pg_dump"],
            ["--format=custom", "--no-password", "--snapshot", snapshot],
            LibpqEnvironment.Of(database.Connections.Owner),
            (_, dump) => parts.WriteAsync(Parts.Database, dump, stop),
            stop
        );
}
