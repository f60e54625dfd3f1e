using BrewFloor.Store.Backups;
using BrewFloor.Store.PrivateServer;
using Npgsql;

namespace BrewFloor.Benchmarks.Drills;

/// <summary>Shows on a backup of the drill that what is looked for is found: each fault is put in, and must be noticed.</summary>
internal static class BackupControls
{
    public const int Faults = 6;

    /// <returns>The faults that were not found; none is right.</returns>
    public static async Task<IReadOnlyList<string>> MissedAsync(
        string file,
        Passphrase passphrase,
        string folder,
        CancellationToken stop
    )
    {
        var missed = new List<string>();
        void Expect(string fault, bool isFound)
        {
            if (!isFound)
            {
                missed.Add(fault);
            }
        }

        Expect("the right passphrase opens it", await BackupDrill.OpensAsync(file, passphrase, stop));
        await using (var changed = await ChangedAsync(file, bytes => bytes[..^1], stop))
        {
            Expect("a file that was cut", !await BackupDrill.OpensAsync(changed.Path, passphrase, stop));
        }

        await using (var changed = await ChangedAsync(file, Turned, stop))
        {
            Expect("a file with another bit", !await BackupDrill.OpensAsync(changed.Path, passphrase, stop));
        }

        await using (var changed = await ChangedAsync(file, bytes => [.. bytes, .. "writer 3, line 5"u8], stop))
        {
            Expect("words that can be read", await BackupDrill.IsReadableAsync(changed.Path, stop));
        }

        using var fresh = Fresh.Beside(folder);
        var tally = await new SealedRestore(fresh.Address, fresh.Folder).RestoreAsync(file, passphrase, stop);
        await using var database = await BorrowedDatabase.FromAsync(fresh.Address, stop);
        Expect(
            "a row that was lost",
            await DiffersAsync(
                database,
                tally,
                "DELETE FROM thing_changes WHERE ctid = (SELECT min(ctid) FROM thing_changes)",
                stop
            )
        );
        Expect("an entry acknowledged after it", await IsLostAsync(database, stop));
        return missed;
    }

    private static byte[] Turned(byte[] bytes)
    {
        bytes[bytes.Length / 2] ^= 1;
        return bytes;
    }

    private static async Task<bool> DiffersAsync(
        BorrowedDatabase database,
        Tally tally,
        string fault,
        CancellationToken stop
    )
    {
        await using var owner = NpgsqlDataSource.Create(database.Connections.Owner);
        await using var command = owner.CreateCommand(fault);
        if (await command.ExecuteNonQueryAsync(stop) == 0)
        {
            throw new InvalidOperationException($"The control changed nothing: {fault}");
        }

        var now = await Tally.AtAsync(database.Connections.Owner, Tally.OfTablesAsync, stop);
        return now.DifferFrom(tally).Count > 0;
    }

    private static async Task<bool> IsLostAsync(BorrowedDatabase database, CancellationToken stop)
    {
        Acknowledged later = new(Guid.CreateVersion7(), 1, default);
        var found = await Reckoning.OfAsync([later], [], new HashSet<Guid>(), database, stop);
        return found.Lost == 1;
    }

    private static async Task<Changed> ChangedAsync(string file, Func<byte[], byte[]> how, CancellationToken stop)
    {
        var changed = new Changed(file + "-changed");
        await File.WriteAllBytesAsync(changed.Path, how(await File.ReadAllBytesAsync(file, stop)), stop);
        return changed;
    }

    private sealed record Changed(string Path) : IAsyncDisposable
    {
        public ValueTask DisposeAsync()
        {
            File.Delete(Path);
            return ValueTask.CompletedTask;
        }
    }
}
