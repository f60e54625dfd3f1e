using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace BrewFloor.Store.Jobs;

/// <summary>Something due, and what people did about it. Rule, subject and cause are its identity.</summary>
internal sealed class JobRow
{
    public required Guid Id { get; init; }

    public required string Rule { get; init; }

    public required Guid SubjectId { get; init; }

    public required string SubjectKind { get; init; }

    /// <summary>The entry that caused it.</summary>
    public required Guid Cause { get; init; }

    public required DateTimeOffset DueAt { get; init; }

    public required DateTimeOffset OverdueAt { get; init; }

    public DateTimeOffset? ChangesAt { get; init; }

    public required string Because { get; init; }

    public Guid? TankId { get; init; }

    public Guid? TakenBy { get; init; }

    public DateTimeOffset? TakenAt { get; init; }

    public DateTimeOffset? PutOffUntil { get; init; }

    public string? PutOffReason { get; init; }

    public Guid? PutOffBy { get; init; }

    public DateTimeOffset? ResolvedAt { get; init; }

    /// <summary>done, struck, gone.</summary>
    public string? Resolved { get; init; }

    /// <summary>How pressing it was when last looked at: soon, due, overdue.</summary>
    public required string Urgency { get; init; }
}

internal sealed class JobMapping : IEntityTypeConfiguration<JobRow>
{
    public void Configure(EntityTypeBuilder<JobRow> builder)
    {
        builder.ToTable(
            "jobs",
            table =>
            {
                table.HasCheckConstraint("ck_jobs_overdue_is_not_before_due", "overdue_at >= due_at");
                table.HasCheckConstraint("ck_jobs_resolved_says_how", "(resolved_at IS NULL) = (resolved IS NULL)");
                table.HasCheckConstraint(
                    "ck_jobs_put_off_has_reason",
                    "put_off_until IS NULL OR (put_off_reason IS NOT NULL AND put_off_by IS NOT NULL)"
                );
            }
        );
        builder
            .HasIndex(row => new
            {
                row.Rule,
                row.SubjectId,
                row.Cause,
            })
            .IsUnique();
        builder.HasIndex(row => row.SubjectId).HasFilter("resolved_at IS NULL").HasDatabaseName("ix_jobs_open");
        builder.Property(row => row.Because).HasColumnType("jsonb");
    }
}
