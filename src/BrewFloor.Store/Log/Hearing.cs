using BrewFloor.Domain;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.People;

namespace BrewFloor.Store.Log;

/// <summary>A request's entry with its time and the subjects it touches filled in, and what the door itself says to it.</summary>
internal sealed record Heard(Sent Sent, LogEntry Entry, Listed<Objection> AtTheDoor)
{
    /// <summary>It cannot be put on the floor at all: its subjects or the entries it names aren't there.</summary>
    public required bool IsLost { get; init; }

    public Verdict Verdict { get; set; } = null!;
}

/// <summary>A request before the floor: when each entry happened, where it stands, and all that speaks against it. Pure.</summary>
internal sealed class Hearing(Listed<Sent> sent, Author author, Opened opened)
{
    // Behind everything stored: the real numbers are drawn last.
    public const long NotYetDrawn = long.MaxValue / 2;

    private const int LongestNote = 4000;

    public List<Heard> Entries { get; } = [];

    /// <summary>The first moment that the request changes; later entries are needed from here on.</summary>
    public DateTimeOffset From { get; private set; }

    /// <summary>Some of it isn't at the end of its subjects' timelines.</summary>
    public bool IsLate { get; private set; }

    public void Place(Timelines? timelines)
    {
        Entries.Clear();
        var placed = new List<LogEntry>();
        HashSet<Subject> brought = [];
        foreach (var one in sent)
        {
            var entry = opened.Targets.Filled(one.Entry);
            entry = entry with { At = At(entry, Times.Happened(entry, opened.Recorded), placed, timelines) };
            if (entry is Corrected corrected)
            {
                entry = corrected with { Replacement = Replacement(corrected, placed, timelines) };
            }

            var lost = Lost(entry, brought).ToArray();
            brought.UnionWith(Newcomers.Of(entry));
            placed.Add(entry is Corrected { Standing: var standing } ? standing : entry);
            Entries.Add(new(one, entry, [.. lost, .. AtTheDoor(entry)]) { IsLost = lost.Length > 0 });
        }

        Reach();
    }

    /// <summary>What the request brings joins the things, once it is clear what was there before.</summary>
    public void Welcome()
    {
        foreach (var entry in Entries.Where(e => !e.IsLost).Select(e => Brings(e.Entry)))
        {
            Newcomers.Batches(entry).ToList().ForEach(opened.Things.Add);
            Newcomers.Cultures(entry).ToList().ForEach(opened.Things.Add);
            Newcomers.Items(entry).ToList().ForEach(opened.Things.Add);
        }
    }

    /// <summary>What the entry brings: of a correction, what the replacement does.</summary>
    public static LogEntry Brings(LogEntry entry) => entry is Corrected corrected ? corrected.Replacement : entry;

    /// <summary>Whoever it says did it, and of a correction, who did what it puts right.</summary>
    public static IEnumerable<Guid> DoneBy(LogEntry entry) => [.. entry.DoneBy, .. Brings(entry).DoneBy];

    /// <summary>Everything in order: what stood from <see cref="From"/> on, and what the request does to it.</summary>
    public IEnumerable<Step> Steps(Timelines? timelines, IReadOnlyDictionary<Guid, LogEntry> words)
    {
        var leaving = new HashSet<Guid>();
        List<Step> steps = [];
        foreach (var (entry, index) in Entries.Select((e, i) => (e, i)).Where(e => !e.e.IsLost))
        {
            steps.AddRange(Changes(entry, index, timelines, words, leaving));
        }

        steps.AddRange((timelines?.Lines.Values ?? []).Where(l => !leaving.Contains(l.Entry.Id)).Select(Step.Kept));
        return steps.OrderBy(s => s.At).ThenBy(s => s.Seq).ThenBy(s => s.Now is not null);
    }

    private IEnumerable<Step> Changes(
        Heard heard,
        int index,
        Timelines? timelines,
        IReadOnlyDictionary<Guid, LogEntry> words,
        HashSet<Guid> leaving
    )
    {
        var own = new Line(heard.Entry, NotYetDrawn + index, heard.Entry.Id, []);
        var asked = heard.Sent with { Entry = heard.Entry };
        switch (heard.Entry)
        {
            case Corrected corrected:
                var line = timelines!.Lines[corrected.Entry];
                yield return Leaves(line, corrected.Id, leaving);
                var anew = new Line(corrected.Standing, line.Seq, corrected.Id, line.Handed);
                yield return new(anew.Entry.At, anew.Seq)
                {
                    Now = anew,
                    Asked = asked,
                    Cause = corrected.Id,
                };
                yield return new(own.Entry.At, own.Seq) { Now = own };
                break;
            case Struck struck:
                foreach (
                    var step in struck
                        .Entries.Distinct()
                        .SelectMany(id => Strike(struck, id, timelines!, words, leaving))
                )
                {
                    yield return step;
                }

                yield return new(own.Entry.At, own.Seq) { Now = own, Asked = asked };
                break;
            default:
                yield return new(own.Entry.At, own.Seq)
                {
                    Now = own,
                    Asked = asked,
                    Cause = own.Entry.Id,
                };
                break;
        }
    }

    private IEnumerable<Step> Strike(
        Struck struck,
        Guid id,
        Timelines timelines,
        IReadOnlyDictionary<Guid, LogEntry> words,
        HashSet<Guid> leaving
    )
    {
        var target = opened.Targets.Find(id)!;
        yield return Leaves(timelines.Lines[id], struck.Id, leaving);
        if (target.Corrects is not { } first || struck.Entries.Contains(first))
        {
            yield break;
        }

        var line = timelines.Lines[first];
        yield return Leaves(line, struck.Id, leaving);
        var replaced = opened.Targets.Find(first)!.ReplacedBy(target).First();
        var entry = Timelines.Standing(words[replaced.WordsId], first, replaced.WordsId) with { At = replaced.At };
        yield return new(replaced.At, replaced.Seq)
        {
            Now = new(entry, replaced.Seq, replaced.WordsId, line.Handed),
            Cause = struck.Id,
        };
    }

    private static Step Leaves(Line line, Guid cause, HashSet<Guid> leaving)
    {
        leaving.Add(line.Entry.Id);
        return new(line.Entry.At, line.Seq) { Was = line, Cause = cause };
    }

    private LogEntry Replacement(Corrected corrected, List<LogEntry> placed, Timelines? timelines)
    {
        var was = opened.Targets.Find(corrected.Entry)?.Current.Select(s => (DateTimeOffset?)s.At).FirstOrDefault();
        var standing = corrected.Standing with { SentAt = corrected.SentAt };
        var at = standing.At == default && was is { } old ? old : Times.Happened(standing, opened.Recorded);
        return corrected.Replacement with
        {
            Id = corrected.Entry,
            At = at == was ? at : At(standing, at, placed, timelines),
        };
    }

    // A typed minute that holds entries of its subjects comes after the latest of them.
    private DateTimeOffset At(LogEntry entry, DateTimeOffset at, List<LogEntry> placed, Timelines? timelines)
    {
        if (entry.At == default || !Times.IsTypedMinute(at))
        {
            return at;
        }

        var end = at.AddMinutes(1);
        var stored = timelines is null
            ? entry.Subjects.Select(s => opened.Kept.TryGetValue(s, out var kept) ? kept.LastAt : default)
            : timelines.Lines.Values.Select(l => l.Entry).Where(e => Shares(e, entry)).Select(e => e.At);
        var inMinute = stored
            .Concat(placed.Where(e => Shares(e, entry)).Select(e => e.At))
            .Where(held => held >= at && held < end)
            .Select(held => (DateTimeOffset?)held);
        return Times.After(at, inMinute.Max());
    }

    private static bool Shares(LogEntry other, LogEntry entry) =>
        other.Id != entry.Id && other.Subjects.Intersect(entry.Subjects).Any();

    private IEnumerable<Objection> Lost(LogEntry entry, HashSet<Subject> brought)
    {
        var comes = Newcomers.Of(Brings(entry)).ToArray();
        foreach (
            var subject in entry
                .Subjects.Distinct()
                .Where(s => !opened.Things.Has(s) && !brought.Contains(s) && !comes.Contains(s))
        )
        {
            yield return Objection.Impossible(
                $"unknown-{SubjectKinds.NameOf(subject.Kind)}",
                new Number("id", subject.Id)
            );
        }

        foreach (
            var subject in comes.Where(s => brought.Contains(s) || (opened.Things.Has(s) && !IsCorrected(entry, s)))
        )
        {
            yield return Objection.Impossible(
                $"{SubjectKinds.NameOf(subject.Kind)}-exists",
                new Number("id", subject.Id)
            );
        }

        var logged = opened.Targets.Named(entry);
        var mending = entry switch
        {
            Corrected corrected => Mending.Objections(corrected, logged.FirstOrDefault()),
            Struck struck => Mending.Objections(struck, logged),
            _ => [],
        };
        foreach (var objection in mending.Concat(MendedTwice(entry)))
        {
            yield return objection;
        }
    }

    // The correction of the entry that brought a batch may name it again.
    private bool IsCorrected(LogEntry entry, Subject subject) =>
        entry is Corrected corrected
        && opened.Targets.Find(corrected.Entry)?.Standings.Any(s => s.Subject == subject) is true;

    private IEnumerable<Objection> MendedTwice(LogEntry entry) =>
        from id in entry is Corrected or Struck ? Target.NamedBy(entry) : []
        where Entries.Any(e => e.Entry is Corrected or Struck && Moves(e.Entry).Intersect(Moves(entry)).Any())
        select Objection.Impossible("mended-twice", new Number("entry", id));

    private IEnumerable<Guid> Moves(LogEntry entry) =>
        Target.NamedBy(entry).Select(id => opened.Targets.Find(id)).OfType<Target>().Select(t => t.Corrects ?? t.Id);

    private IEnumerable<Objection> AtTheDoor(LogEntry entry)
    {
        if (entry.Note?.Length > LongestNote)
        {
            yield return Objection.Impossible("note-too-long", new Number("most", LongestNote));
        }

        foreach (var nobody in DoneBy(entry).Distinct().Where(id => !opened.People.Contains(id)))
        {
            yield return Objection.Impossible("unknown-person", new Number("id", nobody));
        }

        var ours = entry is Corrected corrected ? corrected.Standing with { SentAt = entry.SentAt } : entry;
        var clocks = Clocks.Objections(ours, opened.Recorded);
        var authority = Authority.Objections(author, entry, opened.Recorded, opened.Rules, opened.Targets.Named(entry));
        foreach (var objection in clocks.Concat(authority))
        {
            yield return objection;
        }
    }

    private void Reach()
    {
        var there = Entries.Where(e => !e.IsLost).Select(e => e.Entry).ToArray();
        var mended = there
            .Where(e => e is Corrected or Struck)
            .SelectMany(Target.NamedBy)
            .Select(id => opened.Targets.Find(id)!)
            .SelectMany(t =>
                t.Current.Concat(opened.Targets.Moving(t)!.Current).Concat(opened.Targets.Moving(t)!.ReplacedBy(t))
            )
            .Select(s => s.At)
            .ToArray();
        From = there
            .Select(e => Brings(e).At)
            .Concat(there.Select(e => e.At))
            .Concat(mended)
            .DefaultIfEmpty(opened.Recorded)
            .Min();
        IsLate =
            mended.Length > 0
            || there
                .SelectMany(e => e.Subjects)
                .Any(s =>
                    opened.Kept.TryGetValue(s, out var kept)
                    && (kept.LastAt > From || kept.FoldVersion != StateRow.CurrentFold)
                );
    }
}
