using BrewFloor.Web.Backups;
using BrewFloor.Web.Hosting;

namespace BrewFloor.Web.Tests.Backups;

public sealed class BackupSettingsTests : IDisposable
{
    private const string Words = "four kettles under snow";

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("brewfloor-settings-");

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public void Without_a_folder_there_is_no_nightly_backup() => Assert.Null(BackupSettings.Read(_ => null));

    [Fact]
    public void With_a_folder_and_a_passphrase_it_is_at_three_and_fourteen_stay()
    {
        var settings = Read(("FOLDER", _folder.FullName), ("PASSPHRASE", Words))!;

        Assert.Equal((_folder.FullName, 3, 14), (settings.Folder, settings.Hour, settings.Keep));
        Assert.Empty(_folder.GetFiles());
    }

    [Fact]
    public void The_passphrase_is_the_first_line_of_the_file_that_is_named()
    {
        var file = Path.Combine(_folder.FullName, "words");
        File.WriteAllText(file, $"{Words}\nanother line\n");

        Assert.Equal(Words, PassphraseSource.Given(Setting(("PASSPHRASE_FILE", file))));
    }

    [Theory]
    [InlineData("HOUR", "24", "BREWFLOOR_BACKUP_HOUR must be 0 to 23, not \"24\".")]
    [InlineData("HOUR", "three", "BREWFLOOR_BACKUP_HOUR must be 0 to 23, not \"three\".")]
    [InlineData("KEEP", "0", "BREWFLOOR_BACKUP_KEEP must be 1 to 1000, not \"0\".")]
    [InlineData("FOLDER", "/proc/nowhere", "BREWFLOOR_BACKUP_FOLDER names /proc/nowhere, which cannot be written")]
    [InlineData("PASSPHRASE", "too short", "BREWFLOOR_BACKUP_FOLDER asks for a nightly backup, and its passphrase")]
    [InlineData("PASSPHRASE_FILE", "/nowhere", "BREWFLOOR_BACKUP_PASSPHRASE and BREWFLOOR_BACKUP_PASSPHRASE_FILE")]
    public void A_bad_value_is_named_with_what_is_allowed(string name, string value, string begins)
    {
        var problem = Assert.Throws<StartProblemException>(() =>
            Read(("FOLDER", _folder.FullName), ("PASSPHRASE", Words), (name, value))
        );

        Assert.StartsWith(begins, problem.Message, StringComparison.Ordinal);
    }

    private static BackupSettings? Read(params (string Name, string Value)[] said) =>
        BackupSettings.Read(Setting(said));

    private static Func<string, string?> Setting(params (string Name, string Value)[] said) =>
        name =>
            said.LastOrDefault(s => string.Equals($"BREWFLOOR_BACKUP_{s.Name}", name, StringComparison.Ordinal)).Value;
}
