using BrewFloor.Benchmarks.Drills;

namespace BrewFloor.Benchmarks;

/// <summary>The drills in full count, from the command line.</summary>
internal static class FullDrills
{
    private const string Scratch = "/tmp"; // a disk that is really written to
    private const int Seed = 20261124;

    private static readonly Dictionary<string, FullDrill> All = new(StringComparer.Ordinal)
    {
        [KillDrill.Name] = new(
            "The app is killed",
            "SIGKILL of the app at random moments, one in eight while it starts; then it is started again.",
            KillDrill.InFull,
            async (kills, seed, under, stop) => await KillDrill.RunAsync(kills, seed, under, stop)
        ),
        [PostgresDrill.Name] = new(
            "PostgreSQL is killed",
            "SIGKILL of the private PostgreSQL, or of some of its processes, under an app that goes on running.",
            PostgresDrill.InFull,
            async (kills, seed, under, stop) => await PostgresDrill.RunAsync(kills, seed, under, stop)
        ),
        [BackupDrill.Name] = new(
            "Backups are taken while people log",
            "Each is taken while all writers write, restored into a fresh data folder, held against what had been acknowledged when it began, and folded anew.",
            BackupDrill.InFull,
            async (backups, seed, under, stop) => await BackupDrill.RunAsync(backups, seed, under, stop)
        ),
        [BareDrill.Name] = new(
            "A bare machine",
            "Both commands of the README, in a folder with Debian's smallest system and the .NET SDK and nothing else.",
            1,
            async (_, _, under, stop) => await BareDrill.RunAsync(under, stop)
        ),
    };

    /// <param name="words">Which; none: all. A number after the name: so many times, and nothing is written to the docs.</param>
    public static async Task<int> RunAsync(string[] words)
    {
        if (words is [var first, ..] && !All.ContainsKey(first))
        {
            await Console.Error.WriteLineAsync($"No drill is called {first}; there are {string.Join(", ", All.Keys)}.");
            return 2;
        }

        int? fewer = words is [_, var count]
            ? int.Parse(count, System.Globalization.CultureInfo.InvariantCulture)
            : null;
        var passed = true;
        foreach (
            var (name, drill) in All.Where(d => words is [] || string.Equals(d.Key, words[0], StringComparison.Ordinal))
        )
        {
            Console.WriteLine($"{drill.Title}, {fewer ?? drill.Times} times ...");
            var outcome = await drill.Run(fewer ?? drill.Times, Seed, Scratch, CancellationToken.None);
            Console.WriteLine(DrillReport.Text(outcome));
            passed &= outcome.IsPassed;
            if (fewer is null)
            {
                var day = DateOnly.FromDateTime(TimeProvider.System.GetLocalNow().Date);
                DrillReport.Write(PublishedApp.Root, name, drill.Title, drill.What, outcome, day);
            }
        }

        return passed ? 0 : 1;
    }

    private sealed record FullDrill(
        string Title,
        string What,
        int Times,
        Func<int, int, string, CancellationToken, Task<IDrilled>> Run
    );
}
