using System.Diagnostics;
using System.Globalization;

namespace BrewFloor.Benchmarks.Drills;

/// <summary>The processes of the private PostgreSQL in a data folder, to be killed.</summary>
internal static class PostgresProcesses
{
    /// <summary>Null while there is none.</summary>
    public static int? Postmaster(string folder)
    {
        var file = Path.Combine(folder, "pgdata", "postmaster.pid");
        try
        {
            var pid = int.Parse(File.ReadLines(file).First(), CultureInfo.InvariantCulture);
            return Lives(pid) ? pid : null;
        }
        catch (Exception e) when (e is IOException or FormatException or InvalidOperationException)
        {
            return null;
        }
    }

    /// <summary>What the postmaster runs: a process for each connection, and those that write.</summary>
    public static IReadOnlyList<int> Backends(int postmaster) =>
        [
            .. Directory
                .GetDirectories("/proc")
                .Select(folder =>
                    int.TryParse(Path.GetFileName(folder), CultureInfo.InvariantCulture, out var pid) ? pid : 0
                )
                .Where(pid => pid > 0 && ParentOf(pid) == postmaster && Lives(pid)),
        ];

    /// <summary>SIGKILL.</summary>
    /// <returns>False: it was gone already.</returns>
    public static bool Kill(int pid)
    {
        try
        {
            using var process = Process.GetProcessById(pid);
            process.Kill();
            return true;
        }
        catch (Exception e) when (e is ArgumentException or InvalidOperationException)
        {
            return false;
        }
    }

    /// <summary>It is there, and no corpse.</summary>
    public static bool Lives(int pid) => StateOf(pid) is { } state && state is not ('Z' or 'X');

    private static char? StateOf(int pid) => StatOf(pid) is [var state, ..] ? state[0] : null;

    private static int? ParentOf(int pid) =>
        StatOf(pid) is [_, var parent, ..] ? int.Parse(parent, CultureInfo.InvariantCulture) : null;

    // "4711 (postgres) S 1 ...": the name may hold anything, so what counts follows the last bracket.
    private static string[] StatOf(int pid)
    {
        try
        {
            var stat = File.ReadAllText($"/proc/{pid.ToString(CultureInfo.InvariantCulture)}/stat");
            return stat[(stat.LastIndexOf(')') + 2)..].Split(' ');
        }
        catch (IOException)
        {
            return [];
        }
    }
}
