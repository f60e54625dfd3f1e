using System.Text;
using BrewFloor.Store.PrivateServer;

namespace BrewFloor.Store.Backups;

/// <summary>The files of the data folder that belong into a backup: all but the server's own and what only this run needs.</summary>
internal sealed class DataFiles(string folder)
{
    private const UnixFileMode OnlyOwnersFolder =
        UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute;

    // By their beginnings: pgdata.new-..., postgres.log.old.
    private static readonly string[] NotOurs = ["pgdata", "run", "postgres.log", "app.lock", "app.log", Staged];

    private const string Staged = "restored.new-";

    /// <returns>Paths within the folder, with forward slashes.</returns>
    public IReadOnlyList<string> Names() =>
        Directory.Exists(folder) ? [.. Below(folder).Order(StringComparer.Ordinal)] : [];

    /// <exception cref="PrivateServerProblem">It cannot be read.</exception>
    public FileStream Read(string name)
    {
        try
        {
            return File.OpenRead(Path.Combine(folder, name));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw BackupProblems.FileNotReadable(Path.Combine(folder, name), e.Message);
        }
    }

    /// <summary>A folder beside, where restored files wait until all else is in its place.</summary>
    public StagedFiles Stage()
    {
        Directory.CreateDirectory(folder, OnlyOwnersFolder);
        return new(
            folder,
            Directory.CreateDirectory($"{folder}/{Staged}{Guid.CreateVersion7():N}", OnlyOwnersFolder).FullName
        );
    }

    private IEnumerable<string> Below(string under) =>
        new DirectoryInfo(under)
            .EnumerateFileSystemInfos()
            .Where(found => found.LinkTarget is null && IsOurs(Path.GetRelativePath(folder, found.FullName)))
            .SelectMany(found =>
                found switch
                {
                    DirectoryInfo => Below(found.FullName),
                    FileInfo file when !IsBackup(file) => [Path.GetRelativePath(folder, file.FullName)],
                    _ => [],
                }
            );

    private static bool IsOurs(string name) =>
        !name.EndsWith(".part", StringComparison.Ordinal)
        && !Array.Exists(NotOurs, other => name.StartsWith(other, StringComparison.Ordinal));

    // Somebody keeps their backups in here: a backup of backups would grow without end.
    private static bool IsBackup(FileInfo file)
    {
        const int Enough = 16;
        if (file.Length < Enough)
        {
            return false;
        }

        using var from = file.OpenRead();
        var begin = new byte[Enough];
        from.ReadExactly(begin);
        var words = Encoding.Latin1.GetString(begin);
        return words.StartsWith("PGDMP", StringComparison.Ordinal)
            || words.StartsWith("BrewFloor backup", StringComparison.Ordinal);
    }

    /// <summary>Restored files, not yet in their places.</summary>
    internal sealed class StagedFiles(string folder, string stage) : IDisposable
    {
        private readonly List<string> _names = [];

        /// <param name="name">A path within the data folder.</param>
        /// <param name="file">The backup, for the sentence.</param>
        public FileStream Write(string name, string file)
        {
            if (name.Split('/').Any(part => part is "" or "." or "..") || Path.IsPathRooted(name) || !IsOurs(name))
            {
                throw BackupProblems.Altered(file);
            }

            var path = Path.Combine(stage, name);
            Directory.CreateDirectory(Path.GetDirectoryName(path)!, OnlyOwnersFolder);
            _names.Add(name);
            return OwnersFile.Create(path);
        }

        /// <summary>What the backup holds counts: a secret that a new place made for itself opens nothing of what came back.</summary>
        public void PutInPlace()
        {
            foreach (var name in _names)
            {
                var place = Path.Combine(folder, name);
                Directory.CreateDirectory(Path.GetDirectoryName(place)!);
                File.Move(Path.Combine(stage, name), place, overwrite: true);
            }
        }

        public void Dispose() => Directory.Delete(stage, recursive: true);
    }
}
