using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace BrewFloor.Store.Log;

internal sealed class EntryMapping
    : IEntityTypeConfiguration<EntryRow>,
        IEntityTypeConfiguration<EntryKindRow>,
        IEntityTypeConfiguration<EntrySubjectRow>
{
    public void Configure(EntityTypeBuilder<EntryRow> builder)
    {
        builder.ToTable(
            "entries",
            table =>
            {
                table.HasCheckConstraint("ck_entries_payload_is_an_object", "jsonb_typeof(payload) = 'object'");
                table.HasCheckConstraint(
                    "ck_entries_written_over_stops_has_reason",
                    "done_anyway = '{}' OR (reason IS NOT NULL AND already_happened)"
                );
                table.HasCheckConstraint("ck_entries_note_is_short", "length(note) <= 4000");
                table.HasCheckConstraint("ck_entries_hash_is_sha256", "length(hash) = 32");
            }
        );
        builder.HasIndex(row => row.Seq).IsUnique();
        builder.HasIndex(row => new { row.Recorded, row.Seq }).HasDatabaseName("ix_entries_recorded");
        builder.Property(row => row.Seq).ValueGeneratedNever();
        builder.Property(row => row.Kind).HasMaxLength(40);
        builder.Property(row => row.Payload).HasColumnType("jsonb");
        builder.Property(row => row.Objections).HasColumnType("jsonb");
        builder
            .HasOne<EntryKindRow>()
            .WithMany()
            .HasForeignKey(row => new { row.Kind, row.Version })
            .OnDelete(DeleteBehavior.Restrict);
        builder.Metadata.RemoveIndex([
            builder.Metadata.FindProperty("Kind")!,
            builder.Metadata.FindProperty("Version")!,
        ]);
    }

    public void Configure(EntityTypeBuilder<EntryKindRow> builder)
    {
        builder.ToTable("entry_kinds");
        builder.HasKey(row => new { row.Kind, row.Version });
        builder.Property(row => row.Kind).HasMaxLength(40);
    }

    public void Configure(EntityTypeBuilder<EntrySubjectRow> builder)
    {
        builder.ToTable(
            "entry_subjects",
            table => table.HasCheckConstraint("ck_entry_subjects_ends_after_it_starts", "until > since")
        );
        builder.HasKey(row => new
        {
            row.SubjectId,
            row.At,
            row.Seq,
            row.Since,
        });
        builder.HasIndex(row => row.EntryId);
        builder.HasOne<EntryRow>().WithMany().HasForeignKey(row => row.EntryId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<EntryRow>().WithMany().HasForeignKey(row => row.WordsId).OnDelete(DeleteBehavior.Restrict);
        builder.Metadata.RemoveIndex([builder.Metadata.FindProperty("WordsId")!]);
    }
}

internal sealed class StateMapping
    : IEntityTypeConfiguration<HandedOverRow>,
        IEntityTypeConfiguration<StateRow>,
        IEntityTypeConfiguration<SnapshotRow>,
        IEntityTypeConfiguration<SeenAfterwardsRow>
{
    public void Configure(EntityTypeBuilder<HandedOverRow> builder)
    {
        builder.ToTable("handed_over");
        builder.HasKey(row => new
        {
            row.EntryId,
            row.TakerId,
            row.GiverId,
            row.Kind,
            row.Since,
        });
        builder.Property(row => row.Value).HasColumnType("jsonb");
        builder.HasOne<EntryRow>().WithMany().HasForeignKey(row => row.EntryId).OnDelete(DeleteBehavior.Restrict);
    }

    public void Configure(EntityTypeBuilder<StateRow> builder)
    {
        builder.ToTable("states");
        builder.HasKey(row => row.SubjectId);
        builder.Property(row => row.State).HasColumnType("jsonb");
        builder.HasIndex(row => row.NextEdge).HasFilter("next_edge IS NOT NULL");
    }

    public void Configure(EntityTypeBuilder<SnapshotRow> builder)
    {
        builder.ToTable("snapshots");
        builder.HasKey(row => new
        {
            row.SubjectId,
            row.At,
            row.Seq,
        });
        builder.Property(row => row.State).HasColumnType("jsonb");
    }

    public void Configure(EntityTypeBuilder<SeenAfterwardsRow> builder)
    {
        builder.ToTable("seen_afterwards");
        builder.HasKey(row => new { row.EntryId, row.Code });
        builder.Property(row => row.Objection).HasColumnType("jsonb");
        builder.HasOne<EntryRow>().WithMany().HasForeignKey(row => row.EntryId).OnDelete(DeleteBehavior.Restrict);
    }
}
