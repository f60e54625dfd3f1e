using BrewFloor.Domain.House;
using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.People;

/// <summary>Who may write what, and how far back. All of it is impossible rather than stopped: no reason makes up for it.</summary>
public static class Authority
{
    /// <param name="author">Who hands it in.</param>
    /// <param name="entry">With its time filled in.</param>
    /// <param name="recorded">Our clock.</param>
    /// <param name="rules">How far back each may write.</param>
    /// <param name="mended">The entries that a strike or a correction names; empty for other kinds.</param>
    public static IEnumerable<Objection> Objections(
        Author author,
        LogEntry entry,
        DateTimeOffset recorded,
        HouseRules rules,
        IReadOnlyCollection<Logged> mended
    ) =>
        author.Role is Role.Viewer
            ? [Objection.Impossible("may-not-log")]
            :
            [
                .. OfTheKind(author, entry),
                .. OthersEntries(author, mended),
                .. TooFarBack(author, Dated(entry, mended), recorded, rules),
            ];

    private static IEnumerable<Objection> OfTheKind(Author author, LogEntry entry)
    {
        if (author.IsToken && entry is Allowed or Answered or Corrected or Struck)
        {
            yield return Objection.Impossible("not-by-token", new Number("kind", EntryKinds.NameOf(entry)));
        }

        if (author.Role < Role.Brewer && entry is Allowed or Answered)
        {
            yield return Objection.Impossible("brewers-only", new Number("kind", EntryKinds.NameOf(entry)));
        }
    }

    private static IEnumerable<Objection> OthersEntries(Author author, IReadOnlyCollection<Logged> mended) =>
        author.Role >= Role.Brewer
            ? []
            : mended
                .Where(entry => entry.LoggedBy != author.Id)
                .Select(entry => Objection.Impossible("not-your-entry", new("entry", entry.Id), new("at", entry.At)));

    private static IEnumerable<Objection> TooFarBack(
        Author author,
        DateTimeOffset at,
        DateTimeOffset recorded,
        HouseRules rules
    )
    {
        if (Reach(author, rules) is { } reach && at < recorded - reach)
        {
            yield return Objection.Impossible("too-far-back", new("at", at), new("earliest", recorded - reach));
        }
    }

    /// <summary>A correction is dated by the entry it replaces, and by its own new time where that is earlier: nobody reaches further back by way of it.</summary>
    private static DateTimeOffset Dated(LogEntry entry, IReadOnlyCollection<Logged> mended) =>
        entry switch
        {
            Struck => mended.Select(m => m.At).DefaultIfEmpty(entry.At).Min(),
            Corrected { Replacement: var anew } => mended.Select(m => m.At).Append(anew.At).Min(),
            _ => entry.At,
        };

    /// <summary>Null: any date.</summary>
    private static TimeSpan? Reach(Author author, HouseRules rules) =>
        author switch
        {
            { IsToken: true } => rules.HelperBackdates,
            { Role: Role.Owner } => null,
            { Role: Role.Brewer } => rules.BrewerBackdates,
            _ => rules.HelperBackdates,
        };
}
