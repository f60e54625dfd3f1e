using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace BrewFloor.Store.People;

/// <summary>What happened to the doors of the house; the app adds and reads, and changes nothing of it.</summary>
internal sealed class SecurityEventRow
{
    public long Seq { get; init; }

    /// <summary>By the database's clock.</summary>
    public DateTimeOffset At { get; init; }

    /// <summary>The name of a <see cref="SecurityKind"/>.</summary>
    public required string Kind { get; init; }

    public Guid? ById { get; init; }

    public Guid? AboutId { get; init; }

    public string? Detail { get; init; }

    public string? Network { get; init; }
}

internal sealed class SecurityEventMapping : IEntityTypeConfiguration<SecurityEventRow>
{
    public void Configure(EntityTypeBuilder<SecurityEventRow> builder)
    {
        builder.ToTable(
            "security_events",
            table => table.HasCheckConstraint("ck_security_events_kind_is_a_word", "kind ~ '^[A-Z][A-Za-z]+$'")
        );
        builder.HasKey(row => row.Seq);
        builder.Property(row => row.Seq).UseIdentityAlwaysColumn();
        builder.Property(row => row.At).HasDefaultValueSql("now()");
        builder.Property(row => row.Detail).HasMaxLength(SecurityEvent.LongestText);
        builder.Property(row => row.Network).HasMaxLength(SecurityEvent.LongestText);
        builder.HasIndex(row => row.At);
        builder.HasIndex(row => row.ById);
        builder.HasIndex(row => row.AboutId);
        builder.HasOne<PersonRow>().WithMany().HasForeignKey(row => row.ById).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<PersonRow>().WithMany().HasForeignKey(row => row.AboutId).OnDelete(DeleteBehavior.Restrict);
    }
}
