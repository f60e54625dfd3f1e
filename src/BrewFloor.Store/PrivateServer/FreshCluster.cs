namespace BrewFloor.Store.PrivateServer;

/// <summary>Makes a new, empty database server in a data folder that has none.</summary>
internal sealed class FreshCluster(DataFolder folder, Account postgres, PostgresPrograms programs)
{
    private const UnixFileMode OnlyOwner = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute;

    /// <summary>Made beside and then renamed: killed in the middle, it starts over.</summary>
    public async Task MakeIfNoneAsync(CancellationToken stop)
    {
        if (Directory.Exists(folder.Data))
        {
            return;
        }

        SweepHalfMade();
        folder.DemandRoomForAFreshOne();
        var half = $"{folder.Data}.new-{Guid.CreateVersion7():N}";
        Directory.CreateDirectory(half, OnlyOwner);
        await postgres.TakeOverAsync(half, stop);
        await InitializeAsync(half, stop);
        await postgres.WriteAsync(Path.Combine(half, ClusterSettings.FileName), "", stop);
        await IncludeSettingsAsync(Path.Combine(half, "postgresql.conf"), stop);
        Directory.Move(half, folder.Data);
        await Account.Own.MustRunAsync("sync", [folder.Root], stop); // the new name survives a power cut
    }

    // A name of its own each time: the initdb of a killed app may still be writing into the last one.
    private void SweepHalfMade()
    {
        foreach (var half in Directory.GetDirectories(folder.Root, "pgdata.new*"))
        {
            try
            {
                Directory.Delete(half, recursive: true);
            }
            catch (IOException)
            {
                // Still being written to. It is in nobody's way, and the next sweep gets it.
            }
        }
    }

    private async Task InitializeAsync(string half, CancellationToken stop)
    {
        string[] arguments =
        [
            "-D",
            half,
            "-U",
            SocketConnections.OwnerRole,
            "-E",
            "UTF8",
            "--locale=C.UTF-8", // its order never changes with the system's libraries, so no index goes stale
            "--data-checksums",
            "--auth-local=trust",
            "--auth-host=reject",
        ];
        var ran = await postgres.RunAsync(programs["initdb"], arguments, stop);
        if (!ran.IsDone)
        {
            throw FailedPrograms.Explain("initdb", ran, "", folder);
        }
    }

    private Task<Ran> IncludeSettingsAsync(string conf, CancellationToken stop) =>
        postgres.MustRunAsync(
            "sh",
            ["-c", "cat >> \"$1\"", "sh", conf],
            stop,
            $"\ninclude_if_exists = '{ClusterSettings.FileName}'\n"
        );
}
