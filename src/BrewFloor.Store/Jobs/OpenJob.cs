using BrewFloor.Domain;
using BrewFloor.Domain.Jobs;
using BrewFloor.Domain.Log;
using BrewFloor.Store.Log;
using Npgsql;

namespace BrewFloor.Store.Jobs;

/// <summary>A job that isn't done, and what people said about it.</summary>
public sealed record OpenJob(Guid Id, Job Job)
{
    public Guid? TakenBy { get; init; }

    public DateTimeOffset? TakenAt { get; init; }

    public DateTimeOffset? PutOffUntil { get; init; }

    public string? PutOffReason { get; init; }

    public Guid? PutOffBy { get; init; }

    /// <summary>How pressing it was when it was last looked at.</summary>
    public required Urgency Seen { get; init; }

    /// <summary>Its one parameter: the subjects' ids.</summary>
    internal const string Question = Columns + " WHERE subject_id = ANY($1) AND resolved_at IS NULL";

    internal const string Columns = """
        SELECT id, rule, subject_kind, subject_id, cause, due_at, overdue_at, because, tank_id, changes_at,
               taken_by, taken_at, put_off_until, put_off_reason, put_off_by, urgency
        FROM jobs
        """;

    internal static OpenJob Read(NpgsqlDataReader reader) =>
        new(
            reader.GetGuid(0),
            new(
                reader.GetString(1),
                new(SubjectKinds.Of(reader.GetString(2)), reader.GetGuid(3)),
                reader.GetGuid(4),
                reader.At(5),
                reader.At(6),
                FloorJson.Read<Listed<Number>>(reader.GetString(7))
            )
            {
                TankId = reader.OrNull<Guid>(8),
                ChangesAt = reader.OrNull<DateTimeOffset>(9),
            }
        )
        {
            TakenBy = reader.OrNull<Guid>(10),
            TakenAt = reader.OrNull<DateTimeOffset>(11),
            PutOffUntil = reader.OrNull<DateTimeOffset>(12),
            PutOffReason = reader.TextOrNull(13),
            PutOffBy = reader.OrNull<Guid>(14),
            Seen = Enum.Parse<Urgency>(reader.GetString(15), ignoreCase: true),
        };
}
