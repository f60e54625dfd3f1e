using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace BrewFloor.Store.PrivateServer;

/// <summary>The folder of a private database: who may use it now, and where what lies in it.</summary>
internal sealed class DataFolder
{
    private const int SharingViolation = 11; // EAGAIN: somebody else holds the lock
    private const long BytesPerMb = 1024 * 1024;

    // An empty database takes 46 MB; the rest is for its write-ahead log (80 MB before it is recycled) and the first entries.
    private const long RoomForAFreshOneMb = 256;

    private const int LongestSocketPath = 107; // sockaddr_un holds 108 bytes, the last is 0
    private const string SocketName = "/.s.PGSQL.5432";
    private const long LongestLogMb = 5;

    private const UnixFileMode OnlyOwner = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute;

    private const UnixFileMode OthersPassThrough = OnlyOwner | UnixFileMode.GroupExecute | UnixFileMode.OtherExecute;

    private readonly string _ownSockets;

    public DataFolder(string path)
    {
        Root = Path.TrimEndingDirectorySeparator(Path.GetFullPath(path));
        _ownSockets = Path.Combine(Root, "run");
        Sockets = Encoding.UTF8.GetByteCount(_ownSockets + SocketName) <= LongestSocketPath ? _ownSockets : StandIn();
    }

    public string Root { get; }

    /// <summary>PostgreSQL's own folder.</summary>
    public string Data => Path.Combine(Root, "pgdata");

    public string Log => Path.Combine(Root, "postgres.log");

    /// <summary>Where the socket is: here, or in a short folder when this path is too long for a socket.</summary>
    public string Sockets { get; }

    public bool HasSocket => File.Exists(Sockets + SocketName);

    /// <summary>The major version of PostgreSQL that made the data; <see langword="null"/> when there is none yet.</summary>
    public int? MadeBy()
    {
        var version = Path.Combine(Data, "PG_VERSION");
        return File.Exists(version)
            ? int.Parse(File.ReadAllText(version).Trim(), NumberStyles.None, CultureInfo.InvariantCulture)
            : null;
    }

    /// <summary>Takes the folder for this process. The kernel lets go of it however the process ends.</summary>
    /// <exception cref="PrivateServerProblem">Another one has it, or it cannot be written.</exception>
    public FileStream Take()
    {
        try
        {
            if (!Directory.Exists(Root))
            {
                Directory.CreateDirectory(Root, Environment.IsPrivilegedProcess ? OthersPassThrough : OnlyOwner);
            }

            var path = Path.Combine(Root, "app.lock");
            return new(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
        }
        catch (IOException e) when (e.HResult == SharingViolation)
        {
            throw ServerProblems.FolderInUse(Root);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw ServerProblems.FolderNotWritable(Root, e.Message);
        }
    }

    /// <summary>Makes what PostgreSQL needs around its own folder, and looks whether its user gets there.</summary>
    public async Task PrepareAsync(Account postgres, CancellationToken stop)
    {
        await DemandWayInAsync(postgres, stop);
        await PrepareSocketsAsync(postgres, stop);
        TurnLogOver();
        if (!File.Exists(Log))
        {
            await File.WriteAllTextAsync(Log, "", stop);
            await postgres.TakeOverAsync(Log, stop);
        }
    }

    public void DemandRoomForAFreshOne()
    {
        var freeMb = FreeMb();
        if (freeMb < RoomForAFreshOneMb)
        {
            throw ServerProblems.DiskFull(Root, freeMb, RoomForAFreshOneMb);
        }
    }

    public long FreeMb() => new DriveInfo(Root).AvailableFreeSpace / BytesPerMb;

    /// <summary>Everything from there on was written by the start under way.</summary>
    public long EndOfLog() => File.Exists(Log) ? new FileInfo(Log).Length : 0;

    public string LogSince(long end)
    {
        using var log = new FileStream(Log, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
        log.Seek(end, SeekOrigin.Begin);
        return new StreamReader(log).ReadToEnd();
    }

    private async Task DemandWayInAsync(Account postgres, CancellationToken stop)
    {
        if (postgres.User is not { } user)
        {
            return;
        }

        const string FirstBlocked = """for d; do test -x "$d" || { echo "$d"; exit 1; }; done""";
        var asked = await postgres.RunAsync("sh", ["-c", FirstBlocked, "sh", .. FromTheTop()], stop);
        if (!asked.IsDone)
        {
            throw ServerProblems.FolderNotTraversable(Root, asked.Output.Trim(), user);
        }
    }

    private Stack<string> FromTheTop()
    {
        var folders = new Stack<string>();
        for (var folder = Root; folder is not null; folder = Path.GetDirectoryName(folder))
        {
            folders.Push(folder);
        }

        return folders;
    }

    // Everybody in this folder is let in by PostgreSQL without a password, so it is open to one user alone.
    private async Task PrepareSocketsAsync(Account postgres, CancellationToken stop)
    {
        if (string.Equals(Sockets, _ownSockets, StringComparison.Ordinal))
        {
            Directory.CreateDirectory(Sockets, OnlyOwner);
            File.SetUnixFileMode(Sockets, OnlyOwner);
            await postgres.TakeOverAsync(Sockets, stop);
            return;
        }

        // Anybody could have made it before us: it must be no link, and ours.
        const string Ours = """mkdir -m 700 "$1" 2>/dev/null; test ! -L "$1" && test -O "$1" && chmod 700 "$1" """;
        if (!(await postgres.RunAsync("sh", ["-c", Ours, "sh", Sockets], stop)).IsDone)
        {
            throw ServerProblems.SocketFolder(Sockets);
        }
    }

    private void TurnLogOver()
    {
        if (EndOfLog() > LongestLogMb * BytesPerMb)
        {
            File.Move(Log, Log + ".old", overwrite: true);
        }
    }

    private string StandIn() =>
        "/tmp/brewfloor-" + Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(Root)))[..12];
}
