namespace BrewFloor.Store.Backups;

/// <summary>Which nightly backups may go.</summary>
public static class Keeping
{
    /// <summary>All but the newest ones; the newest that was proven stays, however old it is.</summary>
    /// <param name="nightly">Made or tried, in any order.</param>
    /// <param name="keep">How many of those made.</param>
    public static IReadOnlyList<BackupNote> ToDelete(IEnumerable<BackupNote> nightly, int keep)
    {
        BackupNote[] made = [.. nightly.Where(note => note.IsMade).OrderByDescending(note => note.At)];
        var proven = Array.Find(made, note => note.IsProven);
        return [.. made.Skip(keep).Where(note => note != proven)];
    }
}
