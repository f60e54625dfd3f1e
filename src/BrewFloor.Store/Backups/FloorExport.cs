using System.Text;
using System.Text.Json;
using BrewFloor.Store.PrivateServer;
using Npgsql;

namespace BrewFloor.Store.Backups;

/// <summary>The floor as files that anything reads: each table as lines of JSON, and the same for spreadsheets.</summary>
/// <remarks>Nothing that opens a door is in it: no passwords, no tokens, no keys. It is not encrypted.</remarks>
public sealed class FloorExport(DatabaseAddress address)
{
    private const UnixFileMode OnlyOwner = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute;

    /// <summary>Into a new or empty folder, of one moment, also while the app runs; it has its name only once it is whole.</summary>
    /// <returns>What is in it.</returns>
    /// <exception cref="PrivateServerProblem">Nothing was exported: why, and what to do.</exception>
    public async Task<Tally> ExportAsync(string folder, CancellationToken stop)
    {
        folder = Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder));
        if (File.Exists(folder) || (Directory.Exists(folder) && Directory.EnumerateFileSystemEntries(folder).Any()))
        {
            throw BackupProblems.FolderTaken(folder);
        }

        if (address is DatabaseAddress.InFolder(var options) && new DataFolder(options.Folder).MadeBy() is null)
        {
            throw ServerProblems.NothingThere(options.Folder);
        }

        await using var database = await BorrowedDatabase.FromAsync(address, stop);
        var part = MakePart(folder);
        try
        {
            var tally = await WriteAsync(database.Connections.Owner, part, stop);
            if (Directory.Exists(folder))
            {
                Directory.Delete(folder);
            }

            Directory.Move(part, folder);
            return tally;
        }
        catch
        {
            Directory.Delete(part, recursive: true);
            throw;
        }
    }

    private static string MakePart(string folder)
    {
        var part = folder + ".part";
        try
        {
            if (Directory.Exists(part))
            {
                Directory.Delete(part, recursive: true);
            }

            return Directory.CreateDirectory(part, OnlyOwner).FullName;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw BackupProblems.FileNotWritable(folder, e.Message);
        }
    }

    private static async Task<Tally> WriteAsync(string owner, string folder, CancellationToken stop)
    {
        await using var snapshot = await Snapshot.TakeAsync(owner, stop);
        var tally = await ExportedTables.TallyAsync(snapshot.Connection, ExportedTables.InOrder, stop);
        var folds = await Tally.OfFoldsAsync(snapshot.Connection, stop);
        foreach (var table in ExportedTables.InOrder.Where(tally.Tables.ContainsKey))
        {
            await WriteAsync(snapshot.Connection, table, Path.Combine(folder, table), stop);
        }

        var head = new ExportHead(
            ExportHead.CurrentFormat,
            SealHead.ThisApp,
            snapshot.Schema,
            snapshot.At,
            tally,
            folds
        );
        await File.WriteAllTextAsync(Path.Combine(folder, ExportHead.File), head.Text(), stop);
        return tally;
    }

    private static async Task WriteAsync(NpgsqlConnection connection, string table, string path, CancellationToken stop)
    {
        var columns = await ExportedTables.ColumnsAsync(connection, table, stop);
        await using var lines = new StreamWriter(path + ".jsonl");
        await using var sheet = new StreamWriter(path + ".csv", append: false, Encoding.UTF8); // with the mark that spreadsheets know UTF-8 by
        (lines.NewLine, sheet.NewLine) = ("\n", "\r\n");
        await sheet.WriteLineAsync(CsvLine.Of(columns));
        var question = $"SELECT row_to_json(r)::text FROM ({ExportedTables.Rows(table, columns)} ORDER BY 1, 2) r";
        await using var command = new NpgsqlCommand(question, connection) { CommandTimeout = 0 };
        await using var reader = await command.ExecuteReaderAsync(stop);
        while (await reader.ReadAsync(stop))
        {
            var line = reader.GetString(0);
            await lines.WriteLineAsync(line.AsMemory(), stop);
            using var row = JsonDocument.Parse(line);
            await sheet.WriteLineAsync(CsvLine.Of(row.RootElement).AsMemory(), stop);
        }
    }
}
