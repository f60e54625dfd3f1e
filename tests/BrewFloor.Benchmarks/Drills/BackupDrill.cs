using System.Diagnostics;
using System.Text;
using BrewFloor.Store.Backups;
using BrewFloor.Store.PrivateServer;

namespace BrewFloor.Benchmarks.Drills;

/// <summary>Backups are taken while twenty writers log over HTTP; each is restored into a fresh place and held against what was acknowledged.</summary>
internal static class BackupDrill
{
    public const string Name = "backup";
    public const int InFull = 50;

    private const int WrittenBefore = 40; // entries, before each backup begins
    private const int LongestAfterMs = 200;
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(10);

    private static readonly Passphrase Right = Passphrase.Of("four kettles under snow");
    private static readonly Passphrase Other = Passphrase.Of("four kettles under rain");

    /// <param name="under">Where the data folders are made.</param>
    public static async Task<BackupOutcome> RunAsync(int backups, int seed, string under, CancellationToken stop)
    {
        var published = await PublishedApp.FolderAsync(stop);
        using var floor = await DrillFloor.MakeAsync(under, stop);
        var port = AppProcess.FreePort();
        using var gate = new Gate(DrillFloor.Line());
        using var http = floor.Http(port, gate);
        using var app = AppProcess.Start(published, floor.Folder, port);
        await app.ReadyAsync(http, stop);
        await using var crew = Crew.Begin(floor, seed, http, stop);
        var drill = new Running(floor, crew, gate, new Random(seed));
        for (var n = 0; n < backups; n++)
        {
            await drill.OnceAsync(isLast: n == backups - 1, stop);
        }

        gate.Open();
        await crew.FinishAsync();
        await app.StopAsync(stop);
        return new(seed, drill.Runs, drill.Differing, crew.Ledger.Count, crew.Ledger.Wrong, drill.Missed);
    }

    /// <summary>Whether anything of the floor can be read in a file: a note, the token's name, the dump's own words.</summary>
    internal static async Task<bool> IsReadableAsync(string file, CancellationToken stop)
    {
        var bytes = await File.ReadAllBytesAsync(file, stop);
        return Array.Exists(
            ["writer ", "PGDMP", "entry_subjects", "temperature_c"],
            words => bytes.AsSpan().IndexOf(Encoding.ASCII.GetBytes(words)) >= 0
        );
    }

    private sealed class Running(DrillFloor floor, Crew crew, Gate gate, Random random)
    {
        private readonly List<BackupRun> _runs = [];

        public IReadOnlyList<BackupRun> Runs => _runs;

        public int Differing { get; private set; }

        public IReadOnlyList<string> Missed { get; private set; } = ["none was tried"];

        // While it is restored nobody writes: the log would only grow, and each round take longer.
        public async Task OnceAsync(bool isLast, CancellationToken stop)
        {
            var file = $"{floor.Folder}-{_runs.Count + Differing}.backup";
            var address = new DatabaseAddress.InFolder(PrivateServerOptions.FromEnvironment(floor.Folder));
            gate.Open();
            await crew.Ledger.ReachesAsync(crew.Ledger.Count + WrittenBefore, Patience, stop);
            await Task.Delay(random.Next(LongestAfterMs), stop);
            var before = crew.Ledger.Acknowledged.Values.ToArray();
            var began = Stopwatch.GetTimestamp();
            await new SealedBackup(address, floor.Folder).BackupAsync(file, Right, stop);
            var taking = Stopwatch.GetElapsedTime(began);
            var meanwhile = crew.Ledger.Count - before.Length;
            gate.Close();
            try
            {
                await LookAsync(file, before, taking, meanwhile, stop);
                Missed = isLast ? await BackupControls.MissedAsync(file, Right, floor.Folder, stop) : Missed;
            }
            finally
            {
                File.Delete(file);
            }
        }

        private async Task LookAsync(
            string file,
            Acknowledged[] before,
            TimeSpan taking,
            int meanwhile,
            CancellationToken stop
        )
        {
            using var fresh = Fresh.Beside(floor.Folder);
            var began = Stopwatch.GetTimestamp();
            try
            {
                await new SealedRestore(fresh.Address, fresh.Folder).RestoreAsync(file, Right, stop);
            }
            catch (PrivateServerProblem e) when (e.Code is "restored-differs")
            {
                Differing++;
                return;
            }

            var restoring = Stopwatch.GetElapsedTime(began);
            await using var database = await BorrowedDatabase.FromAsync(fresh.Address, stop);
            var everything = crew.Ledger.Requests.SelectMany(ids => ids).ToHashSet(); // no reader follows a backup
            var found = await Reckoning.OfAsync(before, [.. crew.Ledger.Requests], everything, database, stop);
            _runs.Add(
                new(
                    taking,
                    restoring,
                    new FileInfo(file).Length,
                    found.Stored,
                    meanwhile,
                    found,
                    await IsReadableAsync(file, stop),
                    await OpensAsync(file, Other, stop)
                )
            );
        }
    }

    internal static async Task<bool> OpensAsync(string file, Passphrase passphrase, CancellationToken stop)
    {
        try
        {
            await SealedContents.CheckAsync(file, passphrase, stop);
            return true;
        }
        catch (PrivateServerProblem)
        {
            return false;
        }
    }
}

/// <summary>A data folder that was never used.</summary>
internal sealed class Fresh : IDisposable
{
    private Fresh(string folder) => Folder = folder;

    public string Folder { get; }

    public DatabaseAddress Address => new DatabaseAddress.InFolder(PrivateServerOptions.FromEnvironment(Folder));

    public static Fresh Beside(string folder) => new($"{folder}-fresh-{Guid.CreateVersion7():N}"[..^20]);

    public void Dispose() => Directory.Delete(Folder, recursive: true);
}
