using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace BrewFloor.Store.Backups;

/// <summary>A backup that was made, or tried.</summary>
internal sealed class BackupRow
{
    public required Guid Id { get; init; }

    /// <summary>The moment it holds; when it was tried, if none was made.</summary>
    public required DateTimeOffset At { get; init; }

    public required string File { get; init; }

    /// <summary>None: it was not made.</summary>
    public long? Bytes { get; init; }

    public DateTimeOffset? ProvenAt { get; init; }

    /// <summary>A code: why it was not made, or not proven.</summary>
    public string? Problem { get; init; }

    /// <summary>Made by itself at its hour, not by somebody at the console.</summary>
    public required bool IsNightly { get; init; }
}

internal sealed class BackupMapping : IEntityTypeConfiguration<BackupRow>
{
    public void Configure(EntityTypeBuilder<BackupRow> builder)
    {
        builder.ToTable(
            "backups",
            table =>
            {
                table.HasCheckConstraint(
                    "ck_backups_what_is_proven_was_made",
                    "proven_at IS NULL OR bytes IS NOT NULL"
                );
                table.HasCheckConstraint(
                    "ck_backups_what_is_not_proven_says_why",
                    "(proven_at IS NULL) = (problem IS NOT NULL)"
                );
            }
        );
        builder.HasIndex(row => row.At);
    }
}
