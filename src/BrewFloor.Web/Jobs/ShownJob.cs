using BrewFloor.Domain.Jobs;
using BrewFloor.Domain.Log;
using BrewFloor.Store.Jobs;

namespace BrewFloor.Web.Jobs;

/// <summary>An open job with the names that a person reads in place of ids.</summary>
public sealed record ShownJob(OpenJob Open)
{
    public Job Job => Open.Job;

    /// <summary>The tank to walk to.</summary>
    public string? TankCode { get; init; }

    public int? BatchNumber { get; init; }

    public int? CultureNumber { get; init; }

    public int? ItemNumber { get; init; }

    public string? TakenBy { get; init; }

    /// <summary>Put off, and it isn't time yet.</summary>
    public bool IsPutOffAt(DateTimeOffset now) => Open.PutOffUntil > now;

    /// <summary>As pressing as it is, but a job that is put off waits its time.</summary>
    public Urgency At(DateTimeOffset now) => IsPutOffAt(now) ? Urgency.Soon : Job.At(now);

    /// <summary>Where its subject has its page.</summary>
    public string? Home =>
        TankCode is { } code ? $"tanks/{code}"
        : Job.Subject.Kind is SubjectKind.Culture ? $"yeast/{CultureNumber}"
        : Job.Subject.Kind is SubjectKind.Batch ? $"batches/{BatchNumber}"
        : Job.Subject.Kind is SubjectKind.Item ? $"items/{ItemNumber}"
        : null;
}
