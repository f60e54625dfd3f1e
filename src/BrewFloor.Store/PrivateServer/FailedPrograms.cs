namespace BrewFloor.Store.PrivateServer;

/// <summary>Tells why a program of PostgreSQL failed.</summary>
internal static class FailedPrograms
{
    // A start writes at most one piece of write-ahead log (16 MB) and some small files.
    private const long RoomToStartMb = 32;

    private const string NoSpace = "No space left on device";

    /// <param name="program">Which one.</param>
    /// <param name="ran">How it ended.</param>
    /// <param name="log">What the server logged meanwhile.</param>
    /// <param name="folder">Where.</param>
    public static PrivateServerProblem Explain(string program, Ran ran, string log, DataFolder folder) =>
        Array.Exists(Said(ran, log), line => line.Contains(NoSpace, StringComparison.Ordinal))
            ? DiskFull(folder)
            : ServerProblems.DidNotStart(program, folder.Log, Last(ran, log));

    public static PrivateServerProblem DiskFull(DataFolder folder) =>
        ServerProblems.DiskFull(folder.Root, folder.FreeMb(), RoomToStartMb);

    /// <summary>A file could not be written for lack of room.</summary>
    public static bool IsDiskFull(IOException e) => e.Message.Contains(NoSpace, StringComparison.Ordinal);

    // The first complaint is the cause; those after it are its consequences.
    private static string Last(Ran ran, string log) =>
        Array.Find(Said(ran, log), IsComplaint) ?? Said(ran, log).LastOrDefault() ?? $"it ended with {ran.Code}.";

    private static bool IsComplaint(string line) =>
        line.Contains("FATAL", StringComparison.Ordinal)
        || line.Contains("PANIC", StringComparison.Ordinal)
        || line.Contains("error:", StringComparison.Ordinal);

    private static string[] Said(Ran ran, string log) =>
        string.Join('\n', log, ran.Errors, ran.Output)
            .Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
}
