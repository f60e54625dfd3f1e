using BrewFloor.Store.PrivateServer;

namespace BrewFloor.Store.Backups;

/// <summary>Fills an empty place from a sealed backup, wholly or not at all.</summary>
/// <param name="address">The database: one with no tables, or of a floor that nobody owns yet.</param>
/// <param name="dataFolder">Where keys and other files go.</param>
public sealed class SealedRestore(DatabaseAddress address, string dataFolder)
{
    /// <summary>Looks at its head alone, before anybody is asked for a passphrase.</summary>
    /// <exception cref="PrivateServerProblem">Not there, not a backup, or of a newer format.</exception>
    public static async Task DemandBackupAsync(string file, CancellationToken stop)
    {
        await using var from = SealedContents.Open(file);
        await SealHead.ReadAsync(from, file, stop);
    }

    /// <summary>While no app runs on the place.</summary>
    /// <returns>What is there now: the same as was backed up, table by table.</returns>
    /// <exception cref="PrivateServerProblem">Nothing was restored: why, and what to do.</exception>
    public async Task<Tally> RestoreAsync(string file, Passphrase passphrase, CancellationToken stop)
    {
        file = Path.GetFullPath(file);
        var contents = await SealedContents.CheckAsync(file, passphrase, stop);
        await using var database = await BorrowedDatabase.FromAsync(address, stop);
        await EmptyPlace.DemandAsync(database.Connections.Owner, stop);
        await EmptyPlace.DemandAloneAsync(database.Connections.Owner, stop);
        return await FillAsync(database, contents, file, passphrase, stop);
    }

    /// <summary>From within the app that runs on the place, which must begin anew after it: what it remembers is of the place before.</summary>
    /// <inheritdoc cref="RestoreAsync"/>
    public async Task<Tally> RestoreUnderAppAsync(string file, Passphrase passphrase, CancellationToken stop)
    {
        var contents = await SealedContents.CheckAsync(file, passphrase, stop);
        await using var database = await BorrowedDatabase.FromAsync(address, stop);
        await EmptyPlace.DemandAsync(database.Connections.Owner, stop);
        return await FillAsync(database, contents, file, passphrase, stop);
    }

    private async Task<Tally> FillAsync(
        BorrowedDatabase database,
        SealedContents contents,
        string file,
        Passphrase passphrase,
        CancellationToken stop
    )
    {
        var programs = await DumpPrograms.ForAsync(database, stop);
        var owner = database.Connections.Owner;
        if (address is DatabaseAddress.Given)
        {
            await ApplicationRole.EnsureAsync(database.Connections, stop); // the file grants to it
        }

        await EmptyPlace.ClearAsync(owner, stop);
        using var staged = new DataFiles(dataFolder).Stage();
        await ReadIntoAsync(owner, programs, staged, file, passphrase, stop);
        var restored = await Tally.AtAsync(owner, Tally.OfTablesAsync, stop);
        if (restored.DifferFrom(contents.Tally) is { Count: > 0 } tables)
        {
            await EmptyPlace.ClearAsync(owner, CancellationToken.None);
            throw BackupProblems.Differs(file, tables);
        }

        staged.PutInPlace();
        return restored;
    }

    /// <summary>The database of a backup into an empty one, and its files beside.</summary>
    internal static async Task ReadIntoAsync(
        string owner,
        PostgresPrograms programs,
        DataFiles.StagedFiles? files,
        string file,
        Passphrase passphrase,
        CancellationToken stop
    )
    {
        await using var from = SealedContents.Open(file);
        using var reader = await SealedReader.BeginAsync(from, file, passphrase, stop);
        var parts = new PartReader(reader, file);
        while (await parts.NextAsync(stop) is { } name)
        {
            if (name is Parts.Database)
            {
                await FillDatabaseAsync(owner, programs, parts, file, stop);
            }
            else if (files is not null && name.StartsWith(Parts.Files, StringComparison.Ordinal))
            {
                await using var to = files.Write(name[Parts.Files.Length..], file);
                await parts.CopyToAsync(to, stop);
            }
        }
    }

    private static async Task FillDatabaseAsync(
        string owner,
        PostgresPrograms programs,
        PartReader parts,
        string file,
        CancellationToken stop
    )
    {
        var connection = LibpqEnvironment.Of(owner);
        string[] arguments =
        [
            "--dbname",
            connection["PGDATABASE"],
            "--no-password",
            "--no-owner", // the owner here may have another name
            "--single-transaction",
            "--exit-on-error",
        ];
        var ran = await Account.Own.PipeAsync(
            programs["pg_restore"],
            arguments,
            connection,
            (input, _) => parts.CopyToAsync(input, stop),
            stop
        );
        if (!ran.IsDone)
        {
            throw BackupProblems.Failed("restore", file, DumpPrograms.Reason(ran));
        }
    }
}
