using BrewFloor.Store.Tests.Postgres;
using BrewFloor.Web.Tests.Hosting;
using Npgsql;

namespace BrewFloor.Web.Tests.Backups;

/// <summary>Backup and restore as they are typed.</summary>
public sealed class BackupCommandTests(TestServer server) : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("brewfloor-backup-");

    private string File => Path.Combine(_folder.FullName, "club.backup");

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public async Task A_floor_goes_into_a_file_and_comes_out_elsewhere()
    {
        var (from, to) = (await FloorAsync(), (await server.EmptyDatabaseAsync(FloorApp.Stop)).Owner);

        var (code, said) = await RunAsync(from, "four kettles under snow", "backup", File);
        Assert.True(code == 0 && said.Contains("encrypted", StringComparison.Ordinal), said);
        var wrong = await RunAsync(to, "four kettles under rain", "restore", File);
        Assert.True(
            wrong.Code == 1 && wrong.Said.StartsWith("This passphrase does not open", StringComparison.Ordinal),
            wrong.Said
        );
        Assert.True((await RunAsync(to, "four kettles under snow", "restore", File)).Code == 0);

        Assert.Equal("The shed", await SiteAsync(to));
    }

    [Fact]
    public async Task A_plain_dump_says_that_it_is_one_and_is_restored_without_a_passphrase()
    {
        var (from, to) = (await FloorAsync(), (await server.EmptyDatabaseAsync(FloorApp.Stop)).Owner);

        var (code, said) = await RunAsync(from, passphrase: "", "backup", File, "--plain");
        Assert.True(code == 0 && said.Contains("not encrypted", StringComparison.Ordinal), said);
        Assert.Equal(0, (await RunAsync(to, passphrase: "", "restore", File)).Code);

        Assert.Equal("The shed", await SiteAsync(to));
    }

    [Theory]
    [InlineData("", "There is nobody to ask for the passphrase")]
    [InlineData("too short", "The passphrase must have 12 characters at least.")]
    public async Task Without_a_good_passphrase_nothing_is_backed_up(string passphrase, string begins)
    {
        var (code, said) = await RunAsync(await FloorAsync(), passphrase, "backup", File);

        Assert.True(code == 1 && said.StartsWith(begins, StringComparison.Ordinal), said);
        Assert.False(System.IO.File.Exists(File));
    }

    private async Task<string> FloorAsync()
    {
        var floor = (await server.NewDatabaseAsync(FloorApp.Stop)).Owner;
        await using var database = NpgsqlDataSource.Create(floor);
        await using var command = database.CreateCommand("UPDATE site SET name = 'The shed'");
        await command.ExecuteNonQueryAsync(FloorApp.Stop);
        return floor;
    }

    private static async Task<string?> SiteAsync(string floor)
    {
        await using var database = NpgsqlDataSource.Create(floor);
        await using var command = database.CreateCommand("SELECT name FROM site");
        return await command.ExecuteScalarAsync(FloorApp.Stop) as string;
    }

    private Task<(int Code, string Said)> RunAsync(string database, string passphrase, params string[] words) =>
        AppCommand.RunAsync(
            new Dictionary<string, string>(StringComparer.Ordinal)
            {
                ["ConnectionStrings__BrewFloor"] = database,
                ["BREWFLOOR_BACKUP_PASSPHRASE"] = passphrase,
            },
            [.. words, "--data", Path.Combine(_folder.FullName, "data")]
        );
}
