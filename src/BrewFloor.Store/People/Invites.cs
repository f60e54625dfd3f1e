using BrewFloor.Domain;
using BrewFloor.Domain.People;
using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace BrewFloor.Store.People;

/// <summary>A link that lets one person in, without the link.</summary>
public sealed record Invite(Guid Id, Role Role, string Name, DateTimeOffset CreatedAt, DateTimeOffset ExpiresAt);

/// <summary>What a link is good for.</summary>
public abstract record InviteFound
{
    private InviteFound() { }

    public sealed record Good(Invite Invite) : InviteFound;

    public sealed record Expired(DateTimeOffset At) : InviteFound;

    public sealed record Used : InviteFound;

    /// <summary>Never made, or taken back.</summary>
    public sealed record Unknown : InviteFound;
}

/// <summary>What became of a link that somebody came in with.</summary>
public abstract record InviteUse
{
    private InviteUse() { }

    public sealed record Welcome(Person Person) : InviteUse;

    public sealed record NameTaken : InviteUse;

    public sealed record No(InviteFound Why) : InviteUse;
}

/// <summary>Links that let one person in, once, and expire. Shown once when made, kept as a hash.</summary>
public sealed class Invites(IDbContextFactory<FloorDb> databases)
{
    private const int Bytes = 24;

    /// <summary>How long a link is good.</summary>
    public static readonly TimeSpan Lasts = TimeSpan.FromDays(3);

    public async Task<(Invite Invite, string Secret)> MakeAsync(
        string name,
        Role role,
        Guid by,
        DateTimeOffset now,
        CancellationToken stop
    )
    {
        var secret = ShownOnce.Make(Bytes);
        var row = new InviteRow
        {
            Id = Guid.CreateVersion7(),
            Hash = ShownOnce.Hash(secret),
            Role = RoleNames.Of(role),
            Name = name.Trim(),
            CreatedBy = by,
            CreatedAt = now.ToUniversalTime(),
            ExpiresAt = (now + Lasts).ToUniversalTime(),
        };
        await using var db = await databases.CreateDbContextAsync(stop);
        db.Add(row);
        await db.SaveChangesAsync(stop);
        return (ToInvite(row), secret);
    }

    public async Task<InviteFound> FindAsync(string secret, DateTimeOffset now, CancellationToken stop)
    {
        var hash = ShownOnce.Hash(secret);
        await using var db = await databases.CreateDbContextAsync(stop);
        return Judge(await db.Set<InviteRow>().AsNoTracking().SingleOrDefaultAsync(row => row.Hash == hash, stop), now);
    }

    /// <summary>Makes the person. Of any number who come with the same link at once, one gets in.</summary>
    /// <param name="person">Chosen by whoever comes; a passkey may carry it already.</param>
    public async Task<InviteUse> UseAsync(string secret, NewPerson person, DateTimeOffset now, CancellationToken stop)
    {
        var hash = ShownOnce.Hash(secret);
        await using var db = await databases.CreateDbContextAsync(stop);
        await using var transaction = await db.Database.BeginTransactionAsync(stop);
        var invite = await db.Set<InviteRow>()
            .FromSql($"SELECT * FROM invites WHERE hash = {hash} FOR UPDATE")
            .SingleOrDefaultAsync(stop);
        if (Judge(invite, now) is not InviteFound.Good)
        {
            return new InviteUse.No(Judge(invite, now));
        }

        var row = new PersonRow
        {
            Id = person.Id,
            Name = person.Name.Trim(),
            Role = invite!.Role,
            PasswordHash = person.PasswordHash,
            SecurityStamp = Guid.CreateVersion7(),
            CreatedAt = now.ToUniversalTime(),
        };
        db.Add(row);
        (invite.UsedAt, invite.UsedBy) = (now.ToUniversalTime(), person.Id);
        if (person.Passkey is { } passkey)
        {
            db.Add(Passkeys.ToRow(passkey, person.Id));
        }

        try
        {
            await db.SaveChangesAsync(stop);
        }
        catch (DbUpdateException e) when (e.InnerException is PostgresException { ConstraintName: Accounts.OneName })
        {
            return new InviteUse.NameTaken();
        }

        await transaction.CommitAsync(stop);
        return new InviteUse.Welcome(Accounts.ToPerson(row));
    }

    /// <summary>Those that are still good, the newest first.</summary>
    public async Task<Listed<Invite>> OpenAsync(DateTimeOffset now, CancellationToken stop)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        var at = now.ToUniversalTime();
        var rows = await db.Set<InviteRow>()
            .AsNoTracking()
            .Where(row => row.UsedAt == null && row.RevokedAt == null && row.ExpiresAt > at)
            .OrderByDescending(row => row.CreatedAt)
            .ToListAsync(stop);
        return [.. rows.Select(ToInvite)];
    }

    public async Task RevokeAsync(Guid id, DateTimeOffset now, CancellationToken stop)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        var at = now.ToUniversalTime();
        await db.Set<InviteRow>()
            .Where(row => row.Id == id && row.UsedAt == null)
            .ExecuteUpdateAsync(set => set.SetProperty(row => row.RevokedAt, at), stop);
    }

    private static InviteFound Judge(InviteRow? row, DateTimeOffset now) =>
        row is null or { RevokedAt: not null } ? new InviteFound.Unknown()
        : row.UsedAt is not null ? new InviteFound.Used()
        : row.ExpiresAt <= now ? new InviteFound.Expired(row.ExpiresAt)
        : new InviteFound.Good(ToInvite(row));

    private static Invite ToInvite(InviteRow row) =>
        new(row.Id, RoleNames.Read(row.Role), row.Name, row.CreatedAt, row.ExpiresAt);
}

/// <summary>Who comes in with a link.</summary>
/// <param name="PasswordHash">Of a password nobody knows, for somebody who comes with a passkey.</param>
public sealed record NewPerson(Guid Id, string Name, string PasswordHash)
{
    public Passkey? Passkey { get; init; }
}
