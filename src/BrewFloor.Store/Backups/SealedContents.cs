using BrewFloor.Store.PrivateServer;

namespace BrewFloor.Store.Backups;

/// <summary>What a sealed backup says of itself, once all of it was read.</summary>
/// <param name="Head">Its head.</param>
/// <param name="Tally">What must come out of it.</param>
internal sealed record SealedContents(SealHead Head, Tally Tally)
{
    /// <summary>Reads a file to its last byte and changes nothing.</summary>
    /// <exception cref="PrivateServerProblem">It is not a backup, is damaged, of a newer version, or another passphrase's.</exception>
    public static async Task<SealedContents> CheckAsync(string file, Passphrase passphrase, CancellationToken stop)
    {
        await using var from = Open(file);
        using var reader = await SealedReader.BeginAsync(from, file, passphrase, stop);
        if (!Snapshot.KnownSchemas.Contains(reader.Head.Schema))
        {
            throw BackupProblems.Newer(file, reader.Head.App);
        }

        var parts = new PartReader(reader, file);
        var (tally, hasDatabase) = ((Tally?)null, false);
        while (await parts.NextAsync(stop) is { } name)
        {
            hasDatabase |= name is Parts.Database;
            if (name is Parts.Tally)
            {
                using var json = new MemoryStream();
                await parts.CopyToAsync(json, stop);
                tally = Tally.OfJson(json.ToArray());
            }
        }

        return tally is not null && hasDatabase ? new(reader.Head, tally) : throw BackupProblems.Altered(file);
    }

    public static FileStream Open(string file)
    {
        if (!File.Exists(file))
        {
            throw BackupProblems.FileMissing(file);
        }

        try
        {
            return File.OpenRead(file);
        }
        catch (UnauthorizedAccessException e)
        {
            throw BackupProblems.FileNotReadable(file, e.Message);
        }
    }
}
