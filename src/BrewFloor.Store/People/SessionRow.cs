using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace BrewFloor.Store.People;

/// <summary>One browser that somebody is signed in with.</summary>
internal sealed class SessionRow
{
    public required Guid Id { get; init; }

    public required Guid PersonId { get; init; }

    public required string Device { get; init; }

    public required string Address { get; set; }

    public required DateTimeOffset BeganAt { get; init; }

    public required DateTimeOffset SeenAt { get; set; }

    public DateTimeOffset? EndedAt { get; set; }
}

/// <summary>A link that lets one person in, once. Only its hash is kept.</summary>
internal sealed class InviteRow
{
    public required Guid Id { get; init; }

    public required byte[] Hash { get; init; }

    /// <summary>viewer, helper, brewer, owner.</summary>
    public required string Role { get; init; }

    /// <summary>Who it is for, in the words of whoever made it.</summary>
    public required string Name { get; init; }

    public required Guid CreatedBy { get; init; }

    public required DateTimeOffset CreatedAt { get; init; }

    public required DateTimeOffset ExpiresAt { get; init; }

    public DateTimeOffset? UsedAt { get; set; }

    public Guid? UsedBy { get; set; }

    public DateTimeOffset? RevokedAt { get; set; }
}

/// <summary>The public half of a key that somebody's device keeps.</summary>
internal sealed class PasskeyRow
{
    public required byte[] CredentialId { get; init; }

    public required Guid PersonId { get; init; }

    public required string Name { get; set; }

    public required byte[] PublicKey { get; init; }

    public required long SignCount { get; set; }

    public required string[] Transports { get; init; }

    public required bool IsUserVerified { get; set; }

    public required bool IsBackupEligible { get; init; }

    public required bool IsBackedUp { get; set; }

    public required byte[] AttestationObject { get; init; }

    public required byte[] ClientDataJson { get; init; }

    public required DateTimeOffset CreatedAt { get; init; }

    public DateTimeOffset? UsedAt { get; set; }
}

internal sealed class SignInMapping
    : IEntityTypeConfiguration<SessionRow>,
        IEntityTypeConfiguration<InviteRow>,
        IEntityTypeConfiguration<PasskeyRow>
{
    public void Configure(EntityTypeBuilder<SessionRow> builder)
    {
        builder.ToTable("sessions");
        builder.Property(row => row.Device).HasMaxLength(Session.LongestText);
        builder.Property(row => row.Address).HasMaxLength(Session.LongestText);
        builder.HasIndex(row => row.PersonId);
        builder.HasOne<PersonRow>().WithMany().HasForeignKey(row => row.PersonId).OnDelete(DeleteBehavior.Restrict);
    }

    public void Configure(EntityTypeBuilder<InviteRow> builder)
    {
        builder.ToTable("invites", table => table.HasCheckConstraint("ck_invites_role_is_known", RoleNames.Check));
        builder.HasIndex(row => row.Hash).IsUnique();
        builder.Property(row => row.Name).HasMaxLength(Person.LongestName);
        builder.HasOne<PersonRow>().WithMany().HasForeignKey(row => row.CreatedBy).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<PersonRow>().WithMany().HasForeignKey(row => row.UsedBy).OnDelete(DeleteBehavior.Restrict);
    }

    public void Configure(EntityTypeBuilder<PasskeyRow> builder)
    {
        builder.ToTable("passkeys");
        builder.HasKey(row => row.CredentialId);
        builder.Property(row => row.Name).HasMaxLength(Person.LongestName);
        builder.HasIndex(row => row.PersonId);
        builder.HasOne<PersonRow>().WithMany().HasForeignKey(row => row.PersonId).OnDelete(DeleteBehavior.Restrict);
    }
}
