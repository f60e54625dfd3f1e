using System.Globalization;

namespace BrewFloor.Store.PrivateServer;

/// <summary>The sentences about the private server, each with what to do.</summary>
internal static class ServerProblems
{
    public static PrivateServerProblem FolderInUse(string folder) =>
        new(
            "folder-in-use",
            $"The data folder {folder} is in use by another BrewFloor. Stop that one, or choose another folder with --data DIR.",
            ("folder", folder)
        );

    public static PrivateServerProblem FolderNotWritable(string folder, string reason) =>
        new(
            "folder-not-writable",
            $"The data folder {folder} cannot be written: {PrivateServerProblem.Sentence(reason)} Give it to the user who starts BrewFloor, or choose another folder with --data DIR.",
            ("folder", folder)
        );

    public static PrivateServerProblem FolderNotTraversable(string folder, string blocked, string user) =>
        new(
            "folder-not-traversable",
            $"PostgreSQL runs as the user {user}, who may not pass through {blocked}. Choose a data folder elsewhere with --data DIR (for example /var/lib/brewfloor), or run: chmod o+x {blocked}",
            ("folder", folder),
            ("blocked", blocked),
            ("user", user)
        );

    public static PrivateServerProblem NothingThere(string folder) =>
        new(
            "nothing-there",
            $"There is no database in {folder}. Name the right folder with --data DIR.",
            ("folder", folder)
        );

    public static PrivateServerProblem OtherMajorVersion(string folder, int made, IEnumerable<int> found) =>
        new(
            "other-major-version",
            $"The database in {folder} was made by PostgreSQL {made}, and only PostgreSQL {List(found)} is installed. Install postgresql-{made} beside it (Debian: apt install postgresql-{made}). To move on to the newer one, back up with the old one and restore into a fresh folder.",
            ("folder", folder),
            ("made", made),
            ("found", List(found))
        );

    public static PrivateServerProblem ProgramsMissing(string program, string searched) =>
        new(
            "programs-missing",
            $"PostgreSQL's program {program} was not found in {searched}. Install PostgreSQL {PostgresPrograms.OldestMajor} or newer (Debian, Ubuntu: apt install postgresql), or say where its programs are with BREWFLOOR_PGBIN.",
            ("program", program),
            ("searched", searched)
        );

    public static PrivateServerProblem ProgramsTooOld(int found) =>
        new(
            "programs-too-old",
            $"PostgreSQL {found} is too old: BrewFloor needs {PostgresPrograms.OldestMajor} or newer. Install a newer one beside it (Debian: apt install postgresql).",
            ("found", found),
            ("needed", PostgresPrograms.OldestMajor)
        );

    public static PrivateServerProblem UserMissing(string user) =>
        new(
            "user-missing",
            $"BrewFloor runs as root, and PostgreSQL refuses to. It would run as the user {user}, who does not exist. Run: useradd --system {user}, or name another user with BREWFLOOR_PGUSER, or start BrewFloor as an ordinary user.",
            ("user", user)
        );

    public static PrivateServerProblem SocketFolder(string folder) =>
        new(
            "socket-folder",
            $"The data folder's path is too long for a socket, and the stand-in {folder} belongs to somebody else. Choose a data folder with a shorter path (--data DIR).",
            ("folder", folder)
        );

    public static PrivateServerProblem DiskFull(string folder, long freeMb, long neededMb) =>
        new(
            "disk-full",
            $"The disk of {folder} is full: {freeMb.ToString(CultureInfo.InvariantCulture)} MB free, at least {neededMb.ToString(CultureInfo.InvariantCulture)} MB needed. Make room; nothing that was saved is lost.",
            ("folder", folder),
            ("freeMb", freeMb),
            ("neededMb", neededMb)
        );

    public static PrivateServerProblem DidNotStart(string program, string log, string last) =>
        new(
            "did-not-start",
            $"PostgreSQL's {program} failed: {PrivateServerProblem.Sentence(last)} More is in {log}.",
            ("program", program),
            ("log", log)
        );

    public static PrivateServerProblem NotAnswering(string folder, int seconds) =>
        new(
            "not-answering",
            $"The database in {folder} has not answered for {seconds} s. If it is recovering after a power cut, wait and start again; its log is postgres.log in that folder.",
            ("folder", folder),
            ("seconds", seconds)
        );

    public static PrivateServerProblem NotReachable(string reason) =>
        new(
            "not-reachable",
            $"The database cannot be reached: {PrivateServerProblem.Sentence(reason)} See that it runs, and start this again."
        );

    public static PrivateServerProblem ConnectionString(string name) =>
        new(
            "connection-string",
            $"{name} is not a PostgreSQL connection string. Expected: Host=db;Username=brewfloor;Password=...;Database=brewfloor",
            ("name", name)
        );

    public static PrivateServerProblem OwnerAlone() =>
        new(
            "owner-alone",
            "ConnectionStrings__BrewFloorOwner is set and ConnectionStrings__BrewFloor is not. Set both, or neither for the private database."
        );

    public static PrivateServerProblem ApplicationRoleMissing(string role, string? member) =>
        new(
            "application-role",
            $"The role {role} is missing or not granted, and the given role may not change that. As a superuser of that server, run: CREATE ROLE {role} NOLOGIN; GRANT {role} TO \"{member}\";",
            ("role", role)
        );

    private static string List(IEnumerable<int> majors) =>
        string.Join(" and ", majors.Distinct().Select(m => m.ToString(CultureInfo.InvariantCulture)));
}
