namespace BrewFloor.Store.PrivateServer;

/// <summary>A backup on its way: it has its name only once it is whole and on the disk.</summary>
/// <remarks>Nobody else may read it: it holds the club's people and what they sign in with.</remarks>
internal sealed class PartFile : IDisposable
{
    private readonly string _name;

    private PartFile(string name) => _name = name;

    public string Path => _name + ".part";

    /// <exception cref="PrivateServerProblem">Something is there.</exception>
    public static void DemandFree(string file)
    {
        if (File.Exists(file) || Directory.Exists(file))
        {
            throw BackupProblems.FileExists(file);
        }
    }

    /// <param name="file">The name it will have.</param>
    /// <exception cref="PrivateServerProblem">It cannot be written there.</exception>
    public static PartFile Make(string file)
    {
        var part = new PartFile(file);
        try
        {
            File.Delete(part.Path);
            OwnersFile.Create(part.Path).Dispose();
            return part;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw BackupProblems.FileNotWritable(file, e.Message);
        }
    }

    public FileStream Write() => new(Path, FileMode.Open, FileAccess.Write);

    public async Task NameAsync(CancellationToken stop)
    {
        await Account.Own.MustRunAsync("sync", [Path], stop);
        File.Move(Path, _name, overwrite: false);
        await Account.Own.MustRunAsync("sync", [System.IO.Path.GetDirectoryName(_name)!], stop);
    }

    public void Dispose() => File.Delete(Path);
}
