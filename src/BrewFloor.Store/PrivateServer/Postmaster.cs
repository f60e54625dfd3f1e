using System.Globalization;

namespace BrewFloor.Store.PrivateServer;

/// <summary>The server process, as its <c>postmaster.pid</c> tells it: whether it lives is another question.</summary>
internal sealed class Postmaster
{
    // One above the highest id Linux ever gives (PID_MAX_LIMIT): no process has it.
    private const int Nobody = 4194304;

    private readonly string _file;
    private readonly string[] _lines;

    private Postmaster(string file, string[] lines) => (_file, _lines) = (file, lines);

    public int Pid => int.TryParse(_lines[0], NumberStyles.None, CultureInfo.InvariantCulture, out var pid) ? pid : 0;

    /// <summary>It has said that it takes connections.</summary>
    public bool SaysReady => _lines.Length > 7 && _lines[7].StartsWith("ready", StringComparison.Ordinal);

    // The folder as that process was told it, which may be another name for ours.
    private string DataAsStarted => _lines.Length > 1 ? _lines[1] : "";

    /// <summary>A process with that id runs, is no corpse, and serves this data.</summary>
    /// <remarks>After a power cut the id may belong to anybody, another PostgreSQL included.</remarks>
    public bool IsAlive => State() is { } state && state is not ('Z' or 'X') && Serves(DataAsStarted);

    public static Postmaster? Read(string data)
    {
        var file = Path.Combine(data, "postmaster.pid");
        try
        {
            var lines = File.ReadAllLines(file);
            return lines.Length == 0 ? null : new(file, lines);
        }
        catch (IOException)
        {
            return null; // none, or it ended while we looked
        }
    }

    /// <summary>Makes way for a new server where PostgreSQL itself would wrongly believe that the old one lives.</summary>
    /// <remarks>
    /// Where process 1 does not reap (containers without an init), a killed server stays a zombie, and after a power
    /// cut its id may be a stranger's. The file is written again with an id nobody has: its shared-memory line still
    /// guards against orphaned workers of the old server.
    /// </remarks>
    public async Task ForgetAsync(Account postgres, string sockets, CancellationToken stop)
    {
        if (IsAlive || State() is null)
        {
            return; // gone without a trace: PostgreSQL sees that itself
        }

        var id = Nobody.ToString(CultureInfo.InvariantCulture);
        await postgres.WriteAsync(_file, string.Join('\n', [id, .. _lines[1..], ""]), stop);
        foreach (var socket in Directory.GetFiles(sockets, ".s.PGSQL.*"))
        {
            File.Delete(socket);
        }
    }

    // "4711 (postgres) S 1 ...": the name may hold anything, so the state is what follows the last bracket.
    private char? State()
    {
        try
        {
            var stat = File.ReadAllText($"/proc/{Pid}/stat");
            return stat[stat.LastIndexOf(')') + 2];
        }
        catch (IOException)
        {
            return null;
        }
    }

    private bool Serves(string data)
    {
        try
        {
            return File.ReadAllText($"/proc/{Pid}/cmdline").Split('\0').Contains(data, StringComparer.Ordinal);
        }
        catch (IOException)
        {
            return false;
        }
    }
}
