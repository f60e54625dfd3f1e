using System.Globalization;
using BrewFloor.Store.Backups;
using BrewFloor.Web.Hosting;

namespace BrewFloor.Web.Backups;

/// <summary>The nightly backup, as the process was started: read and checked once, at the start.</summary>
/// <param name="Folder">Where the files go.</param>
/// <param name="Hour">Of the site's clock.</param>
/// <param name="Keep">How many of them stay.</param>
/// <param name="Passphrase">What they are sealed with.</param>
public sealed record BackupSettings(string Folder, int Hour, int Keep, Passphrase Passphrase)
{
    private const string FolderName = "BREWFLOOR_BACKUP_FOLDER";
    private const string HourName = "BREWFLOOR_BACKUP_HOUR";
    private const string KeepName = "BREWFLOOR_BACKUP_KEEP";

    private const int UsualHour = 3;
    private const int UsualKeep = 14;

    /// <returns><see langword="null"/>: no folder is named, so there is no nightly backup.</returns>
    /// <exception cref="StartProblemException">A value is none of those allowed, or the folder cannot be written.</exception>
    public static BackupSettings? Read(Func<string, string?> setting)
    {
        var folder = setting(FolderName);
        if (string.IsNullOrWhiteSpace(folder))
        {
            return null;
        }

        var words = PassphraseSource.Given(setting);
        if (!Passphrase.IsLongEnough(words))
        {
            throw new StartProblemException(
                $"{FolderName} asks for a nightly backup, and its passphrase is missing or shorter than {Passphrase.Shortest} characters: set {PassphraseSource.FileVariable} to a file with one."
            );
        }

        return new(
            Writable(folder),
            Number(setting, HourName, UsualHour, 0, 23),
            Number(setting, KeepName, UsualKeep, 1, 1000),
            Passphrase.Of(words)
        );
    }

    private static int Number(Func<string, string?> setting, string name, int usual, int from, int to)
    {
        var text = setting(name);
        return string.IsNullOrWhiteSpace(text) ? usual
            : int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            && number >= from
            && number <= to
                ? number
            : throw new StartProblemException($"{name} must be {from} to {to}, not \"{text}\".");
    }

    private static string Writable(string folder)
    {
        folder = Path.GetFullPath(folder);
        var trial = Path.Combine(folder, $".brewfloor-{Guid.CreateVersion7():N}.part");
        try
        {
            File.WriteAllText(trial, "");
            File.Delete(trial);
            return folder;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new StartProblemException(
                $"{FolderName} names {folder}, which cannot be written: {e.Message.TrimEnd('.')}. Name a folder that exists and that BrewFloor may write to."
            );
        }
    }
}
