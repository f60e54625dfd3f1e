using System.Text;
using BrewFloor.Store.Backups;
using BrewFloor.Web.Hosting;

namespace BrewFloor.Web.Backups;

/// <summary>Where a passphrase comes from: the environment, a file named there, or whoever sits at the console.</summary>
internal static class PassphraseSource
{
    public const string Variable = "BREWFLOOR_BACKUP_PASSPHRASE";
    public const string FileVariable = "BREWFLOOR_BACKUP_PASSPHRASE_FILE";

    /// <summary>For something new: typed twice, and long enough.</summary>
    /// <exception cref="StartProblemException">None given, or too short.</exception>
    public static Passphrase ForNew(Func<string, string?> environment)
    {
        var words = Given(environment) ?? Typed("Passphrase for the backup: ");
        if (!Passphrase.IsLongEnough(words))
        {
            throw new StartProblemException(
                $"The passphrase must have {Passphrase.Shortest} characters at least. Four or five words that do not belong together make a good one."
            );
        }

        if (Given(environment) is null && !string.Equals(words, Typed("Once more: "), StringComparison.Ordinal))
        {
            throw new StartProblemException("The two were not the same: start again. Nothing was backed up.");
        }

        return Passphrase.Of(words);
    }

    /// <summary>For what is there: the seal itself tells whether it is the right one.</summary>
    /// <exception cref="StartProblemException">None given.</exception>
    public static Passphrase ForExisting(Func<string, string?> environment) =>
        Passphrase.Of(Given(environment) ?? Typed("Passphrase of the backup: "));

    /// <returns><see langword="null"/>: the environment says nothing.</returns>
    /// <exception cref="StartProblemException">It says two things, or names a file that cannot be read.</exception>
    public static string? Given(Func<string, string?> environment)
    {
        var (words, file) = (Said(environment(Variable)), Said(environment(FileVariable)));
        if (words is not null && file is not null)
        {
            throw new StartProblemException($"{Variable} and {FileVariable} are both set: leave one of them out.");
        }

        return file is null ? words : Read(file);
    }

    private static string? Said(string? value) => string.IsNullOrWhiteSpace(value) ? null : value;

    private static string Read(string file)
    {
        try
        {
            return File.ReadLines(file).FirstOrDefault() ?? "";
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new StartProblemException(
                $"{FileVariable} names {file}, which cannot be read: {e.Message.TrimEnd('.')}. Name a file with the passphrase on its first line."
            );
        }
    }

    // Nothing of it is shown, not even how many characters.
    private static string Typed(string question)
    {
        if (Console.IsInputRedirected)
        {
            throw new StartProblemException(
                $"There is nobody to ask for the passphrase: set {FileVariable} to a file with it, or run this in a terminal."
            );
        }

        Console.Error.Write(question);
        var typed = new StringBuilder();
        while (Console.ReadKey(intercept: true) is { Key: not ConsoleKey.Enter } key)
        {
            if (key.Key is ConsoleKey.Backspace)
            {
                typed.Length = Math.Max(0, typed.Length - 1);
            }
            else if (!char.IsControl(key.KeyChar))
            {
                typed.Append(key.KeyChar);
            }
        }

        Console.Error.WriteLine();
        return typed.ToString();
    }
}
