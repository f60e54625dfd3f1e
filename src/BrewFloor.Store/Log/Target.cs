using BrewFloor.Domain;
using BrewFloor.Domain.Log;
using Npgsql;

namespace BrewFloor.Store.Log;

/// <summary>Where an entry stood or stands on one subject's timeline.</summary>
internal readonly record struct Standing(
    Subject Subject,
    DateTimeOffset At,
    long Seq,
    long Since,
    long? Until,
    Guid WordsId
);

/// <summary>A stored entry that another names: to correct it, strike it or answer for it.</summary>
/// <param name="Corrects">Of a correction: the entry it is about.</param>
internal sealed record Target(Guid Id, string Kind, long Seq, DateTimeOffset At, Guid LoggedBy, Guid? Corrects)
{
    public const string Question = """
        WITH named AS (
            SELECT id, CASE WHEN kind = 'corrected' THEN (payload ->> 'entry')::uuid END AS corrects
            FROM entries WHERE id = ANY($1)
        )
        SELECT e.id, e.kind, e.seq, e.at, e.logged_by,
               CASE WHEN e.kind = 'corrected' THEN (e.payload ->> 'entry')::uuid END,
               s.subject_kind, s.subject_id, s.at, s.seq, s.since, s.until, s.words_id
        FROM (SELECT id FROM named UNION SELECT corrects FROM named WHERE corrects IS NOT NULL) n
        JOIN entries e ON e.id = n.id
        LEFT JOIN entry_subjects s ON s.entry_id = e.id
        ORDER BY s.since
        """;

    public List<Standing> Standings { get; } = [];

    public IEnumerable<Standing> Current => Standings.Where(s => s.Until is null);

    public bool IsStruck => !Current.Any();

    /// <summary>The entry itself, or the correction, that a correction took the place of.</summary>
    public IEnumerable<Standing> ReplacedBy(Target correction) => Standings.Where(s => s.Until == correction.Seq);

    public static async Task<Dictionary<Guid, Target>> ReadAsync(NpgsqlDataReader reader, CancellationToken stop)
    {
        var targets = new Dictionary<Guid, Target>();
        while (await reader.ReadAsync(stop))
        {
            var id = reader.GetGuid(0);
            if (!targets.TryGetValue(id, out var target))
            {
                target = new(
                    id,
                    reader.GetString(1),
                    reader.GetInt64(2),
                    reader.At(3),
                    reader.GetGuid(4),
                    reader.OrNull<Guid>(5)
                );
                targets.Add(id, target);
            }

            if (reader.TextOrNull(6) is { } kind)
            {
                target.Standings.Add(
                    new(
                        new(SubjectKinds.Of(kind), reader.GetGuid(7)),
                        reader.At(8),
                        reader.GetInt64(9),
                        reader.GetInt64(10),
                        reader.OrNull<long>(11),
                        reader.GetGuid(12)
                    )
                );
            }
        }

        return targets;
    }

    /// <summary>The entries that an entry names.</summary>
    public static IEnumerable<Guid> NamedBy(LogEntry entry) =>
        entry switch
        {
            Corrected corrected => [corrected.Entry],
            Struck struck => struck.Entries,
            Answered answered => [answered.Entry],
            _ => [],
        };
}

/// <summary>The entries a request names, and what the domain wants to know of them.</summary>
internal sealed class Targets(IReadOnlyDictionary<Guid, Target> all)
{
    public Target? Find(Guid id) => all.GetValueOrDefault(id);

    /// <summary>The entry whose timeline moves: of a correction, the one it is about.</summary>
    public Target? Moving(Target target) => target.Corrects is { } first ? Find(first) : target;

    /// <summary>The entry with the subjects it touches filled in.</summary>
    public LogEntry Filled(LogEntry entry) =>
        entry switch
        {
            Corrected corrected => corrected with { Touched = Subjects(entry) },
            Struck struck => struck with { Touched = Subjects(entry) },
            Answered answered => answered with { Touched = Subjects(entry) },
            _ => entry,
        };

    public IReadOnlyCollection<Logged> Named(LogEntry entry) =>
        entry is Corrected or Struck
            ? [.. Target.NamedBy(entry).Distinct().Select(Find).OfType<Target>().Select(AsLogged)]
            : [];

    private Logged AsLogged(Target target)
    {
        var moving = Moving(target) ?? target;
        var ats = target.Corrects is null ? moving.Current : moving.Current.Concat(moving.ReplacedBy(target));
        return new(target.Id, target.Kind, target.LoggedBy, ats.Select(s => s.At).DefaultIfEmpty(target.At).Min())
        {
            IsStruck = target.IsStruck || moving.IsStruck,
            IsReplaced = target.Corrects is not null && moving.Current.Any(s => s.WordsId != target.Id),
        };
    }

    private Listed<Subject> Subjects(LogEntry entry) =>
        [
            .. Target
                .NamedBy(entry)
                .Select(Find)
                .OfType<Target>()
                .SelectMany(target => Touched(target, entry is Struck))
                .Distinct(),
        ];

    private IEnumerable<Subject> Touched(Target target, bool isStrike) =>
        Moving(target) is { } moving && isStrike
            ? [.. target.Current.Concat(moving.Current).Concat(moving.ReplacedBy(target)).Select(s => s.Subject)]
            : target.Current.Select(s => s.Subject);
}
