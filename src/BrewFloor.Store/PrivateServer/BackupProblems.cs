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

    public static PrivateServerProblem NotABackup(string file) =>
        new(
            "not-a-backup",
            $"{file} is not a backup of BrewFloor, and nothing was changed. Name a file that ./brewfloor backup made.",
            ("file", file)
        );

    public static PrivateServerProblem Newer(string file, string made) =>
        new(
            "backup-newer",
            $"{file} was made by a newer BrewFloor ({made}), and nothing was changed. Install that version or a later one, then restore.",
            ("file", file),
            ("made", made)
        );

    public static PrivateServerProblem WrongPassphrase(string file) =>
        new(
            "wrong-passphrase",
            $"This passphrase does not open {file}, and nothing was changed. Give the one the backup was made with: nobody can read it without.",
            ("file", file)
        );

    public static PrivateServerProblem CutShort(string file) =>
        new(
            "backup-cut-short",
            $"{file} ends too early: it was cut short, and nothing was changed. Copy it again from where it was made, or take an older backup.",
            ("file", file)
        );

    public static PrivateServerProblem Altered(string file) =>
        new(
            "backup-altered",
            $"{file} is not as it was made: something in it was altered, and nothing was changed. Copy it again from where it was made, or take an older backup.",
            ("file", file)
        );

    public static PrivateServerProblem PassphraseTooShort() =>
        new(
            "passphrase-too-short",
            $"The passphrase must have {Backups.Passphrase.Shortest} characters at least. Four or five words that do not belong together are a good one.",
            ("shortest", Backups.Passphrase.Shortest)
        );

    public static PrivateServerProblem InUse() =>
        new(
            "place-in-use",
            "BrewFloor runs on this database. Stop it, then restore; or restore on its page /setup while nobody owns the floor yet."
        );

    public static PrivateServerProblem Differs(string file, IEnumerable<string> tables) =>
        new(
            "restored-differs",
            $"What came out of {file} is not what was backed up ({string.Join(", ", tables)}), and it was removed again. Take an older backup, and keep this file to find out why.",
            ("file", file)
        );

    public static PrivateServerProblem ProofDiffers(string file, IEnumerable<string> tables) =>
        new(
            "proof-differs",
            $"{file} was restored beside, and it is not what was backed up ({string.Join(", ", tables)}). Do not rely on it: take another one, and keep this one to find out why.",
            ("file", file)
        );

    public static PrivateServerProblem NoScratchDatabase(string login) =>
        new(
            "no-scratch-database",
            $"The backup could not be tried out: {login} may not make a database beside the floor's. Let a superuser run: ALTER ROLE \"{login}\" CREATEDB",
            ("login", login)
        );

    public static PrivateServerProblem NoRoomToProve(string folder, long freeMb, long neededMb) =>
        new(
            "no-room-to-prove",
            $"The backup could not be tried out: the disk of {folder} has {freeMb} MB free, and {neededMb} MB are needed to restore it beside. Make room there.",
            ("folder", folder),
            ("free", freeMb),
            ("needed", neededMb)
        );

    public static PrivateServerProblem FolderTaken(string folder) =>
        new(
            "folder-taken",
            $"There is something in {folder} already, and it is not overwritten. Name a new folder.",
            ("folder", folder)
        );

    public static PrivateServerProblem NotAnExport(string folder) =>
        new(
            "not-an-export",
            $"{folder} is not an export of BrewFloor, and nothing was changed. Name a folder that ./brewfloor export made.",
            ("folder", folder)
        );

    public static PrivateServerProblem ExportAltered(string folder, string tables) =>
        new(
            "export-altered",
            $"What is in {folder} is not as it was exported ({PrivateServerProblem.Sentence(tables).TrimEnd('.')}), and nothing was changed. Export again; what was changed by hand goes through the forms, not through an import.",
            ("folder", folder)
        );

    public static PrivateServerProblem FileNotReadable(string file, string reason) =>
        new(
            "file-not-readable",
            $"{file} cannot be read: {PrivateServerProblem.Sentence(reason)} Let the user who runs BrewFloor read it.",
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
