namespace BrewFloor.Domain.Log;

/// <summary>The log with its strikes and corrections carried out: what the folds read.</summary>
public static class AsItStands
{
    /// <summary>The entries that stand, by time and then by the order of the log.</summary>
    /// <param name="log">All of it, or all of some subjects, with the seq of each; in any order.</param>
    /// <returns>
    /// Of a corrected entry the latest correction that wasn't struck, under the first id and at its own time, in the order of the
    /// first. No strikes and no corrections.
    /// </returns>
    public static IEnumerable<LogEntry> Of(IEnumerable<(long Seq, LogEntry Entry)> log)
    {
        (long Seq, LogEntry Entry)[] all = [.. log.OrderBy(line => line.Seq)];
        var struck = all.Select(line => line.Entry).OfType<Struck>().SelectMany(s => s.Entries).ToHashSet();
        var corrections = all.Select(line => line.Entry)
            .OfType<Corrected>()
            .Where(correction => !struck.Contains(correction.Id))
            .ToLookup(correction => correction.Entry);
        return from line in all
            where line.Entry is not (Struck or Corrected) && !struck.Contains(line.Entry.Id)
            let entry = corrections[line.Entry.Id].LastOrDefault() is { } latest ? latest.Standing : line.Entry
            orderby entry.At, line.Seq
            select entry;
    }
}
