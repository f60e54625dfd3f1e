using BrewFloor.Domain.Batches;
using BrewFloor.Domain.House;
using BrewFloor.Domain.Jobs;
using BrewFloor.Domain.Log;
using BrewFloor.Store.Log;
using Npgsql;

namespace BrewFloor.Store.Jobs;

/// <summary>What the rules say of some subjects now, against what stands in the table; written by whoever holds their locks.</summary>
internal sealed class JobKeeping(IReadOnlyCollection<OpenJob> open, DateTimeOffset now)
{
    private const string Keep = """
        INSERT INTO jobs (id, rule, subject_kind, subject_id, cause, due_at, overdue_at, because, tank_id, changes_at, urgency)
        VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11)
        ON CONFLICT (rule, subject_id, cause) DO UPDATE SET
            due_at = excluded.due_at, overdue_at = excluded.overdue_at, because = excluded.because, tank_id = excluded.tank_id,
            changes_at = excluded.changes_at, urgency = excluded.urgency, resolved_at = NULL, resolved = NULL
        """;

    private readonly List<Job> _anew = [];
    private readonly List<OpenJob> _gone = [];

    /// <summary>When each subject must be looked at again.</summary>
    public Dictionary<Subject, DateTimeOffset?> NextEdges { get; } = [];

    public bool HasNews => _anew.Count > 0 || _gone.Count > 0;

    public void Look(
        Things things,
        HouseRules rules,
        IReadOnlyDictionary<Subject, State> states,
        IEnumerable<Subject> subjects
    )
    {
        foreach (var subject in subjects)
        {
            var jobs = JobRules.For(things.Floor(rules, states, [subject, .. TanksOf(subject, states)]), subject, now);
            var stand = open.Where(o => o.Job.Subject == subject).ToArray();
            _anew.AddRange(jobs.Where(job => !stand.Any(o => IsTheSame(o, job))));
            _gone.AddRange(stand.Where(o => !jobs.Any(job => IsOne(o.Job, job))));
            NextEdges[subject] = jobs.Select(job => job.NextEdge(now)).Min();
        }
    }

    private static IEnumerable<Subject> TanksOf(Subject subject, IReadOnlyDictionary<Subject, State> states) =>
        states.GetValueOrDefault(subject) is BatchState batch
            ? batch.InTanks.Select(beer => Subject.Tank(beer.TankId))
            : [];

    /// <summary>Adds the statements that make it so.</summary>
    /// <param name="struck">Entries that the request strikes: what they caused resolves as struck.</param>
    /// <param name="reopens">A change of the log may make a closed job open again; a change of rules or time may not.</param>
    public void Write(NpgsqlBatch batch, IReadOnlyCollection<Guid> struck, bool reopens)
    {
        foreach (var job in _anew)
        {
            batch.Add(
                reopens ? Keep : Keep + " WHERE jobs.resolved_at IS NULL",
                Guid.CreateVersion7(),
                job.Rule,
                SubjectKinds.NameOf(job.Subject.Kind),
                job.Subject.Id,
                job.Cause,
                Times.Cut(job.DueAt),
                Times.Cut(job.OverdueAt),
                Statements.Jsonb(FloorJson.Of(job.Because)),
                Statements.Id(job.TankId),
                Statements.Instant(job.ChangesAt is { } at ? Times.Cut(at) : null),
                NameOf(job.At(now))
            );
        }

        foreach (var gone in _gone)
        {
            var how =
                struck.Contains(gone.Job.Cause) ? "struck"
                : reopens ? "done"
                : "gone";
            batch.Add("UPDATE jobs SET resolved_at = $2, resolved = $3 WHERE id = $1", gone.Id, now, how);
        }

        if (HasNews)
        {
            batch.Add("SELECT pg_notify('floor', 'jobs')");
        }
    }

    private bool IsTheSame(OpenJob stands, Job job) =>
        IsOne(stands.Job, job)
        && stands.Seen == job.At(now)
        && stands.Job.TankId == job.TankId
        && stands.Job.DueAt == Times.Cut(job.DueAt)
        && stands.Job.OverdueAt == Times.Cut(job.OverdueAt)
        && stands.Job.ChangesAt == (job.ChangesAt is { } at ? Times.Cut(at) : null)
        && string.Equals(FloorJson.Of(stands.Job.Because), FloorJson.Of(job.Because), StringComparison.Ordinal);

    private static bool IsOne(Job left, Job right) =>
        string.Equals(left.Rule, right.Rule, StringComparison.Ordinal)
        && left.Subject == right.Subject
        && left.Cause == right.Cause;

    private static string NameOf(Urgency urgency) =>
        urgency switch
        {
            Urgency.Soon => "soon",
            Urgency.Due => "due",
            _ => "overdue",
        };
}
