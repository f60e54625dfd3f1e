using BrewFloor.Domain;
using Microsoft.EntityFrameworkCore;

namespace BrewFloor.Store.People;

/// <summary>The public half of a key that somebody's device keeps (W3C Web Authentication, a "passkey").</summary>
public sealed record Passkey(byte[] CredentialId, string Name, byte[] PublicKey, uint SignCount)
{
    public Listed<string> Transports { get; init; } = [];

    public bool IsUserVerified { get; init; }

    public bool IsBackupEligible { get; init; }

    public bool IsBackedUp { get; init; }

    public byte[] AttestationObject { get; init; } = [];

    public byte[] ClientDataJson { get; init; } = [];

    public required DateTimeOffset CreatedAt { get; init; }

    public DateTimeOffset? UsedAt { get; init; }
}

/// <summary>Who has which passkeys.</summary>
public sealed class Passkeys(IDbContextFactory<FloorDb> databases)
{
    public async Task AddAsync(Guid person, Passkey passkey, CancellationToken stop)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        db.Add(ToRow(passkey, person));
        await db.SaveChangesAsync(stop);
    }

    /// <summary>What the device said of itself when it was used.</summary>
    public async Task UsedAsync(Passkey passkey, DateTimeOffset now, CancellationToken stop)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        var (id, count, at) = (passkey.CredentialId, (long)passkey.SignCount, now.ToUniversalTime());
        await db.Set<PasskeyRow>()
            .Where(row => row.CredentialId == id)
            .ExecuteUpdateAsync(
                set =>
                    set.SetProperty(row => row.SignCount, count)
                        .SetProperty(row => row.IsBackedUp, passkey.IsBackedUp)
                        .SetProperty(row => row.IsUserVerified, passkey.IsUserVerified)
                        .SetProperty(row => row.UsedAt, at),
                stop
            );
    }

    /// <returns>Null: nobody has it.</returns>
    public async Task<Person?> OwnerOfAsync(byte[] credentialId, CancellationToken stop)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        var row = await db
            .People.AsNoTracking()
            .SingleOrDefaultAsync(
                person =>
                    db.Set<PasskeyRow>().Any(key => key.CredentialId == credentialId && key.PersonId == person.Id),
                stop
            );
        return row is null ? null : Accounts.ToPerson(row);
    }

    /// <summary>In the order they were added.</summary>
    public async Task<Listed<Passkey>> OfAsync(Guid person, CancellationToken stop)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        var rows = await db.Set<PasskeyRow>()
            .AsNoTracking()
            .Where(row => row.PersonId == person)
            .OrderBy(row => row.CreatedAt)
            .ToListAsync(stop);
        return [.. rows.Select(ToPasskey)];
    }

    public async Task RemoveAsync(Guid person, byte[] credentialId, CancellationToken stop)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        await db.Set<PasskeyRow>()
            .Where(row => row.PersonId == person && row.CredentialId == credentialId)
            .ExecuteDeleteAsync(stop);
    }

    internal static PasskeyRow ToRow(Passkey passkey, Guid person) =>
        new()
        {
            CredentialId = passkey.CredentialId,
            PersonId = person,
            Name = passkey.Name,
            PublicKey = passkey.PublicKey,
            SignCount = passkey.SignCount,
            Transports = [.. passkey.Transports],
            IsUserVerified = passkey.IsUserVerified,
            IsBackupEligible = passkey.IsBackupEligible,
            IsBackedUp = passkey.IsBackedUp,
            AttestationObject = passkey.AttestationObject,
            ClientDataJson = passkey.ClientDataJson,
            CreatedAt = passkey.CreatedAt.ToUniversalTime(),
        };

    private static Passkey ToPasskey(PasskeyRow row) =>
        new(row.CredentialId, row.Name, row.PublicKey, (uint)row.SignCount)
        {
            Transports = [.. row.Transports],
            IsUserVerified = row.IsUserVerified,
            IsBackupEligible = row.IsBackupEligible,
            IsBackedUp = row.IsBackedUp,
            AttestationObject = row.AttestationObject,
            ClientDataJson = row.ClientDataJson,
            CreatedAt = row.CreatedAt,
            UsedAt = row.UsedAt,
        };
}
