using System.Globalization;
using BrewFloor.Store.Backups;
using BrewFloor.Store.People;
using BrewFloor.Store.PrivateServer;
using BrewFloor.Web.Account;
using BrewFloor.Web.Hosting;

namespace BrewFloor.Web.Backups;

/// <summary>Backup and restore from the console, also while the app runs.</summary>
public static class BackupCommands
{
    public static Task<int> BackupAsync(StartOptions options)
    {
        var file = FileIn(options);
        return options.IsPlain ? BackupPlainAsync(options, file) : BackupSealedAsync(options, file);
    }

    public static async Task<int> RestoreAsync(StartOptions options)
    {
        var (file, address) = (FileIn(options), ShortCommands.AddressOf(options));
        if (await PlainBackup.IsOneAsync(file, CancellationToken.None))
        {
            await new PlainBackup(address).RestoreAsync(file, CancellationToken.None);
            await NoteAsync(address, SecurityKind.Restored, file);
            Console.WriteLine($"Restored from {file}, a plain dump: nothing in it says whether it is what was dumped.");
            return 0;
        }

        await SealedRestore.DemandBackupAsync(file, CancellationToken.None);
        var passphrase = PassphraseSource.ForExisting(Environment.GetEnvironmentVariable);
        var restored = await new SealedRestore(address, options.DataFolder).RestoreAsync(
            file,
            passphrase,
            CancellationToken.None
        );
        await NoteAsync(address, SecurityKind.Restored, file);
        Console.WriteLine($"Restored from {file}: {Words(restored)}, each compared with what was backed up.");
        return 0;
    }

    public static async Task<int> ExportAsync(StartOptions options)
    {
        var folder = FolderIn(options);
        var tally = await new FloorExport(ShortCommands.AddressOf(options)).ExportAsync(folder, CancellationToken.None);
        await NoteAsync(ShortCommands.AddressOf(options), SecurityKind.Exported, folder);
        Console.WriteLine(
            $"Exported to {folder}: {Words(tally)}. It is not encrypted; passwords, tokens and keys are not in it."
        );
        return 0;
    }

    public static async Task<int> ImportAsync(StartOptions options)
    {
        var folder = FolderIn(options);
        var tally = await new FloorImport(ShortCommands.AddressOf(options)).ImportAsync(folder, CancellationToken.None);
        await NoteAsync(ShortCommands.AddressOf(options), SecurityKind.Imported, folder);
        Console.WriteLine(
            $"Imported from {folder}: {Words(tally)}, folded anew and the same as exported. Nobody has a password yet: run user reset-password NAME."
        );
        return 0;
    }

    private static async Task<int> BackupPlainAsync(StartOptions options, string file)
    {
        await new PlainBackup(ShortCommands.AddressOf(options)).BackupAsync(file, CancellationToken.None);
        await NoteAsync(ShortCommands.AddressOf(options), SecurityKind.BackedUp, file);
        Console.WriteLine(
            $"Backed up to {file}. It is a plain dump: not encrypted, without the keys of the data folder, and nobody has tried to restore it."
        );
        return 0;
    }

    private static async Task<int> BackupSealedAsync(StartOptions options, string file)
    {
        SealedBackup.DemandFree(file);
        var passphrase = PassphraseSource.ForNew(Environment.GetEnvironmentVariable);
        var address = ShortCommands.AddressOf(options);
        var round = new BackupRound(address, options.DataFolder, TimeProvider.System);
        var (note, tally, problem) = await round.TakeAsync(file, passphrase, isNightly: false, CancellationToken.None);
        await BackupBook.WriteAsync(address, note, CancellationToken.None);
        await NoteAsync(address, SecurityKind.BackedUp, file);
        Console.WriteLine(
            $"Backed up to {file}: {Words(tally)}, encrypted{(note.IsProven ? ", and proven: restored beside, folded anew and compared" : "")}. Without the passphrase nobody can read it, you neither: keep it apart from the file."
        );
        if (problem is not null)
        {
            await Console.Error.WriteLineAsync(problem);
        }

        return note.Problem is "proof-differs" ? 1 : 0; // what could not be tried out is still worth copying away
    }

    private static Task NoteAsync(DatabaseAddress address, SecurityKind kind, string path) =>
        SecurityBook.WriteAsync(
            address,
            new(kind) { Detail = Path.GetFileName(path), Network = SecurityLog.Console },
            CancellationToken.None
        );

    private static string Words(Tally tally) =>
        string.Create(CultureInfo.InvariantCulture, $"{tally.Tables.Count} tables, {tally.Rows} rows");

    private static string FileIn(StartOptions options) =>
        options.Words is [var file]
            ? Path.GetFullPath(file)
            : throw new StartProblemException($"{options.Command} FILE");

    private static string FolderIn(StartOptions options) =>
        options.Words is [var folder]
            ? Path.GetFullPath(folder)
            : throw new StartProblemException($"{options.Command} DIR");
}
