using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace BrewFloor.Store.Spreadsheets;

/// <summary>A file that somebody brought, what its columns mean, and what became of it.</summary>
internal sealed class SpreadsheetRow
{
    public required Guid Id { get; init; }

    /// <summary>tanks, batches, cultures.</summary>
    public required string Kind { get; init; }

    /// <summary>Of the file.</summary>
    public required string Name { get; init; }

    public required Guid UploadedBy { get; init; }

    public required DateTimeOffset UploadedAt { get; init; }

    /// <summary>What stood in it; null: the days it is kept are over.</summary>
    public string? Cells { get; init; }

    /// <summary>What each column means, once somebody said so.</summary>
    public string? Matching { get; init; }

    public DateTimeOffset? ImportedAt { get; init; }

    public Guid? ImportedBy { get; init; }

    public required Guid[] Entries { get; init; }

    /// <summary>The tanks it added.</summary>
    public required Guid[] Tanks { get; init; }

    /// <summary>The batches and cultures that its entries brought.</summary>
    public required Guid[] Others { get; init; }

    public DateTimeOffset? UndoneAt { get; init; }

    public Guid? UndoneBy { get; init; }
}

internal sealed class SpreadsheetMapping : IEntityTypeConfiguration<SpreadsheetRow>
{
    public void Configure(EntityTypeBuilder<SpreadsheetRow> builder)
    {
        builder.ToTable(
            "spreadsheets",
            table =>
            {
                table.HasCheckConstraint("ck_spreadsheets_kind_is_known", "kind IN ('tanks', 'batches', 'cultures')");
                table.HasCheckConstraint(
                    "ck_spreadsheets_what_is_imported_says_by_whom",
                    "(imported_at IS NULL) = (imported_by IS NULL)"
                );
                table.HasCheckConstraint(
                    "ck_spreadsheets_what_is_undone_was_imported",
                    "undone_at IS NULL OR imported_at IS NOT NULL"
                );
            }
        );
        builder.Property(row => row.Cells).HasColumnType("jsonb");
        builder.Property(row => row.Matching).HasColumnType("jsonb");
        builder.HasIndex(row => row.UploadedAt);
    }
}
