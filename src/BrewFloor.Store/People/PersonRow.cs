using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace BrewFloor.Store.People;

/// <summary>Somebody of the house. Their name stands here alone; the log keeps ids.</summary>
internal sealed class PersonRow
{
    public required Guid Id { get; init; }

    public required string Name { get; set; }

    /// <summary>viewer, helper, brewer, owner.</summary>
    public required string Role { get; set; }

    /// <summary>Null: no account, only a name to say who did it.</summary>
    public string? PasswordHash { get; set; }

    public bool MustChangePassword { get; set; }

    /// <summary>Changed with the password, so that older sign-ins end.</summary>
    public Guid SecurityStamp { get; set; }

    public int FailedSignIns { get; set; }

    public DateTimeOffset? LockedUntil { get; set; }

    public bool IsActive { get; set; } = true;

    /// <summary>Units, theme and the like, as the pages keep them.</summary>
    public string Preferences { get; set; } = "{}";

    public required DateTimeOffset CreatedAt { get; init; }
}

/// <summary>A key for a program. Only its hash is kept.</summary>
internal sealed class TokenRow
{
    public required Guid Id { get; init; }

    public required string Name { get; init; }

    /// <summary>SHA-256 of the token: it is random, so nothing slower is needed.</summary>
    public required byte[] Hash { get; init; }

    /// <summary>read, log, readings.</summary>
    public required string[] Scopes { get; init; }

    public required DateTimeOffset CreatedAt { get; init; }

    public Guid? CreatedBy { get; init; }

    public DateTimeOffset? RevokedAt { get; set; }
}

internal sealed class PeopleMapping : IEntityTypeConfiguration<PersonRow>, IEntityTypeConfiguration<TokenRow>
{
    public void Configure(EntityTypeBuilder<PersonRow> builder)
    {
        builder.ToTable(
            "people",
            table =>
            {
                table.HasCheckConstraint("ck_people_role_is_known", RoleNames.Check);
                table.HasCheckConstraint("ck_people_failed_sign_ins_are_counted", "failed_sign_ins >= 0");
            }
        );
        builder.Property(row => row.Name).HasMaxLength(Person.LongestName);
        builder.Property(row => row.Preferences).HasColumnType("jsonb");
    }

    public void Configure(EntityTypeBuilder<TokenRow> builder)
    {
        builder.ToTable(
            "tokens",
            table =>
                table.HasCheckConstraint("ck_tokens_scopes_are_known", "scopes <@ ARRAY['read', 'log', 'readings']")
        );
        builder.HasIndex(row => row.Hash).IsUnique();
        builder.Property(row => row.Name).HasMaxLength(Person.LongestName);
        builder.HasOne<PersonRow>().WithMany().HasForeignKey(row => row.CreatedBy).OnDelete(DeleteBehavior.Restrict);
    }
}
