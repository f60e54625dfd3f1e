namespace BrewFloor.Store.PrivateServer;

/// <summary>The sentences about backup and restore, each with what to do.</summary>
internal static class BackupProblems
{
    public static PrivateServerProblem FileExists(string file) =>
        new(
            "backup-exists",
            $"{file} exists already and is not overwritten. Name another file, or move that one away.",
            ("file", file)
        );

    public static PrivateServerProblem FileNotWritable(string file, string reason) =>
        new(
            "backup-not-writable",
            $"The backup {file} cannot be written: {PrivateServerProblem.Sentence(reason)} Name a file in a folder that exists and that you may write to.",
            ("file", file)
        );

    public static PrivateServerProblem FileMissing(string file) =>
        new("backup-missing", $"There is no file {file}. Name the backup to restore.", ("file", file));

    public static PrivateServerProblem Unreadable(string file, string reason) =>
        new(
            "backup-unreadable",
            $"{file} cannot be read as a backup, and nothing was changed: {PrivateServerProblem.Sentence(reason)} Take another backup.",
            ("file", file)
        );

    public static PrivateServerProblem NotEmpty(long tables) =>
        new(
            "place-not-empty",
            $"The database has {tables} tables already, and a restore never overwrites. Choose an empty folder with --data DIR, or an empty database.",
            ("tables", tables)
        );

    public static PrivateServerProblem Failed(string what, string file, string reason) =>
        new(
            $"{what}-failed",
            $"The {what} failed and left nothing behind: {PrivateServerProblem.Sentence(reason)} Put that right and start it again.",
            ("file", file)
        );

    public static PrivateServerProblem ProgramsOlder(int server, int programs) =>
        new(
            "programs-older-than-server",
            $"The database is PostgreSQL {server}, and the programs here are PostgreSQL {programs}, which cannot back it up. Install postgresql-client-{server} (Debian: apt install postgresql-client-{server}).",
            ("server", server),
            ("programs", programs)
        );
}
