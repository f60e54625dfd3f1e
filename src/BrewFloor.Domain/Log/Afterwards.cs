namespace BrewFloor.Domain.Log;

/// <summary>What later entries hear anew because something before them was logged late, struck or corrected.</summary>
public static class Afterwards
{
    public const string Code = "later-impossible";

    private const int Most = 5;
    private const string Entries = "entries";

    /// <summary>What an entry hears on the floor as it stands before it now, and didn't hear when it was judged.</summary>
    public static Listed<Objection> Anew(LogEntry entry, Floor before, Listed<Objection> asJudged) =>
        [
            .. entry
                .Objections(before)
                .Where(now => !asJudged.Any(then => string.Equals(then.Code, now.Code, StringComparison.Ordinal))),
        ];

    /// <summary>Impossible when a later entry has become so; it names the first five of them. Stops and cautions undo nothing.</summary>
    /// <param name="later">The later entries, in their order, with what each hears anew.</param>
    public static IEnumerable<Objection> Objections(IEnumerable<(LogEntry Entry, Listed<Objection> Anew)> later)
    {
        LogEntry[] impossible =
        [
            .. later.Where(l => l.Anew.Any(o => o.Level is Level.Impossible)).Select(l => l.Entry),
        ];
        if (impossible is [var first, ..])
        {
            yield return Objection.Impossible(
                Code,
                new("kind", EntryKinds.NameOf(first)),
                new("at", first.At),
                new("count", impossible.Length),
                new(Entries, string.Join(' ', impossible.Take(Most).Select(entry => entry.Id)))
            );
        }
    }

    /// <summary>The entries that such an objection names.</summary>
    public static IEnumerable<Guid> Named(Objection objection) =>
        string.Equals(objection.Code, Code, StringComparison.Ordinal)
        && objection.Numbers.FirstOrDefault(number => number.Name is Entries).Value is string ids
            ? ids.Split(' ').Select(Guid.Parse)
            : [];
}
