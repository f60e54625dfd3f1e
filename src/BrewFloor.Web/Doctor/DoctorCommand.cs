using BrewFloor.Domain.Log;
using BrewFloor.Store.PrivateServer;
using BrewFloor.Web.Hosting;
using BrewFloor.Web.Shell;
using Npgsql;

namespace BrewFloor.Web.Doctor;

/// <summary>The same from the console, with the app running or without.</summary>
public static class DoctorCommand
{
    /// <returns>1: something is bad.</returns>
    public static async Task<int> RunAsync(StartOptions options)
    {
        var backups = Environment.GetEnvironmentVariable("BREWFLOOR_BACKUP_FOLDER") is { Length: > 0 } folder
            ? folder
            : null;
        Finding[] findings =
        [
            .. await OfDatabaseAsync(options),
            .. Checkup.OfMachine(options.DataFolder, backups, zone: ""),
        ];
        var wording = Reader.Stranger;
        foreach (var finding in findings)
        {
            Console.WriteLine($"{finding.Word(wording), -5} {finding.Name(wording)}: {finding.Sentence(wording)}");
        }

        return Array.Exists(findings, finding => finding.Health is Health.Bad) ? 1 : 0;
    }

    private static async Task<IReadOnlyList<Finding>> OfDatabaseAsync(StartOptions options)
    {
        var address = ShortCommands.AddressOf(options);
        if (address is DatabaseAddress.InFolder(var server) && !Directory.Exists(Path.Combine(server.Folder, "pgdata")))
        {
            return [Finding.Bad("database", "database-none", new Number("folder", server.Folder))];
        }

        try
        {
            await using var borrowed = await BorrowedDatabase.FromAsync(address, CancellationToken.None);
            await using var database = NpgsqlDataSource.Create(
                new NpgsqlConnectionStringBuilder(borrowed.Connections.Owner) { Pooling = false }.ConnectionString
            );
            var found = await Checkup.OfDatabaseAsync(database, TimeProvider.System, CancellationToken.None);
            return found[0].Health is Health.Bad
                ? found
                : [.. found, await Checkup.OfBackupAsync(new(database), TimeProvider.System, CancellationToken.None)];
        }
        catch (Exception e) when (e is PrivateServerProblem or NpgsqlException)
        {
            return [Finding.Bad("database", "database-away", new Number("reason", e.Message))];
        }
    }
}
