using BrewFloor.Domain;
using BrewFloor.Domain.People;
using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace BrewFloor.Store.People;

/// <summary>Somebody of the house, with what signing in needs to know.</summary>
public sealed record Person(Guid Id, string Name, Role Role)
{
    /// <summary>In characters; a token's too.</summary>
    public const int LongestName = 80;

    /// <summary>Null: no account, only a name to say who did it.</summary>
    public string? PasswordHash { get; init; }

    public bool MustChangePassword { get; init; }

    /// <summary>Changed with the password and the role, so that older sign-ins end.</summary>
    public Guid SecurityStamp { get; init; }

    public int FailedSignIns { get; init; }

    public DateTimeOffset? LockedUntil { get; init; }

    public bool IsActive { get; init; } = true;

    /// <summary>JSON as the pages keep it: units, theme.</summary>
    public string Preferences { get; init; } = "{}";
}

/// <summary>When an account is closed for a while.</summary>
/// <param name="After">So many wrong passwords.</param>
/// <param name="Until">From now on.</param>
/// <param name="ForgetBefore">A lock that ended before that is forgotten, with what led to it.</param>
public readonly record struct Lockout(int After, DateTimeOffset Until, DateTimeOffset ForgetBefore);

/// <summary>The people table. How a password is hashed and when an account is locked is for whoever signs people in.</summary>
public sealed class Accounts(IDbContextFactory<FloorDb> databases)
{
    internal const string OneName = "ix_people_name_without_case";

    /// <returns>Null: somebody of that name is there already (without case).</returns>
    public Task<Person?> AddAsync(
        string name,
        Role role,
        string? passwordHash,
        bool mustChange,
        DateTimeOffset now,
        CancellationToken stop
    ) => AddAsync(Guid.CreateVersion7(), name, role, passwordHash, mustChange, now, stop);

    /// <summary>Somebody whose id the log knows already.</summary>
    public Task<Person?> AddAsync(
        Guid id,
        string name,
        Role role,
        string? passwordHash,
        DateTimeOffset now,
        CancellationToken stop
    ) => AddAsync(id, name, role, passwordHash, mustChange: false, now, stop);

    private async Task<Person?> AddAsync(
        Guid id,
        string name,
        Role role,
        string? passwordHash,
        bool mustChange,
        DateTimeOffset now,
        CancellationToken stop
    )
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        var row = new PersonRow
        {
            Id = id,
            Name = name.Trim(),
            Role = RoleNames.Of(role),
            PasswordHash = passwordHash,
            MustChangePassword = mustChange,
            SecurityStamp = Guid.CreateVersion7(),
            CreatedAt = now.ToUniversalTime(),
        };
        db.People.Add(row);
        try
        {
            await db.SaveChangesAsync(stop);
        }
        catch (DbUpdateException e) when (e.InnerException is PostgresException { ConstraintName: OneName })
        {
            return null;
        }

        return ToPerson(row);
    }

    public async Task<Person?> ByNameAsync(string name, CancellationToken stop)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        var wanted = name.Trim();
        var row = await db
            .People.FromSql($"SELECT * FROM people WHERE lower(name) = lower({wanted})")
            .AsNoTracking()
            .SingleOrDefaultAsync(stop);
        return row is null ? null : ToPerson(row);
    }

    public async Task<Person?> ByIdAsync(Guid id, CancellationToken stop)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        var row = await db.People.AsNoTracking().SingleOrDefaultAsync(p => p.Id == id, stop);
        return row is null ? null : ToPerson(row);
    }

    /// <summary>By name.</summary>
    public async Task<Listed<Person>> AllAsync(CancellationToken stop)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        var rows = await db.People.AsNoTracking().OrderBy(p => p.Name).ToListAsync(stop);
        return [.. rows.Select(ToPerson)];
    }

    /// <summary>A new password ends every sign-in made with the old one, and every lock.</summary>
    public Task SetPasswordAsync(Guid id, string hash, bool mustChange, CancellationToken stop) =>
        ChangeAsync(
            id,
            row =>
            {
                row.PasswordHash = hash;
                row.MustChangePassword = mustChange;
                row.SecurityStamp = Guid.CreateVersion7();
                row.FailedSignIns = 0;
                row.LockedUntil = null;
            },
            stop
        );

    /// <summary>Another role, or out of the house; what they are signed in with ends.</summary>
    /// <returns>False: nobody could let people in any more, so it stays as it is.</returns>
    public async Task<bool> SetRoleAsync(Guid id, Role role, bool isActive, CancellationToken stop)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        await using var transaction = await db.Database.BeginTransactionAsync(stop);
        // All owners at once: two who let each other go would both be gone.
        var owners = await db
            .People.FromSql($"SELECT * FROM people WHERE role = 'owner' OR id = {id} ORDER BY id FOR NO KEY UPDATE")
            .ToListAsync(stop);
        var row = owners.Single(person => person.Id == id);
        if (
            (role is not Role.Owner || !isActive)
            && !owners.Exists(other =>
                other.Id != id && other is { Role: "owner", IsActive: true, PasswordHash: not null }
            )
            && row is { Role: "owner", IsActive: true }
        )
        {
            return false;
        }

        (row.Role, row.IsActive, row.SecurityStamp) = (RoleNames.Of(role), isActive, Guid.CreateVersion7());
        await db.SaveChangesAsync(stop);
        await TellAsync(db, id, stop);
        await transaction.CommitAsync(stop);
        return true;
    }

    /// <summary>So that pages they have open look again whether they may.</summary>
    internal static Task TellAsync(FloorDb db, Guid person, CancellationToken stop) =>
        db.Database.ExecuteSqlAsync($"SELECT pg_notify('floor', {$"thing person {person}"})", stop);

    public Task SetPreferencesAsync(Guid id, string json, CancellationToken stop) =>
        ChangeAsync(id, row => row.Preferences = json, stop);

    /// <summary>Before a password is looked at: counted as a wrong one, by the database, until <see cref="SignedInAsync"/>.</summary>
    /// <remarks>Of many tries at once no more go through than of as many one after the other.</remarks>
    /// <returns>Null: go on. Else until when nobody may try.</returns>
    public async Task<DateTimeOffset?> BeginTryAsync(
        Guid id,
        DateTimeOffset now,
        Lockout lockout,
        CancellationToken stop
    )
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        var (at, until, old) = (
            now.ToUniversalTime(),
            lockout.Until.ToUniversalTime(),
            lockout.ForgetBefore.ToUniversalTime()
        );
        var counted = await db.Database.ExecuteSqlAsync(
            $"""
            UPDATE people SET (failed_sign_ins, locked_until) = (
                SELECT count, CASE WHEN count >= {lockout.After} THEN {until} END
                FROM (SELECT CASE WHEN locked_until <= {old} THEN 1 ELSE failed_sign_ins + 1 END AS count) AS counted
            )
            WHERE id = {id} AND (locked_until IS NULL OR locked_until <= {at})
            """,
            stop
        );
        return counted == 1
            ? null
            : await db.People.Where(row => row.Id == id).Select(row => row.LockedUntil).SingleAsync(stop) ?? at;
    }

    public Task SignedInAsync(Guid id, CancellationToken stop) =>
        ChangeAsync(
            id,
            row =>
            {
                row.FailedSignIns = 0;
                row.LockedUntil = null;
            },
            stop
        );

    private async Task ChangeAsync(Guid id, Action<PersonRow> change, CancellationToken stop)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        var row = await db.People.SingleAsync(p => p.Id == id, stop);
        var stamp = row.SecurityStamp;
        change(row);
        await db.SaveChangesAsync(stop);
        if (row.SecurityStamp != stamp)
        {
            await TellAsync(db, id, stop);
        }
    }

    internal static Person ToPerson(PersonRow row) =>
        new(row.Id, row.Name, RoleNames.Read(row.Role))
        {
            PasswordHash = row.PasswordHash,
            MustChangePassword = row.MustChangePassword,
            SecurityStamp = row.SecurityStamp,
            FailedSignIns = row.FailedSignIns,
            LockedUntil = row.LockedUntil,
            IsActive = row.IsActive,
            Preferences = row.Preferences,
        };
}

/// <summary>The stored names of roles, and what a person types for one.</summary>
public static class RoleNames
{
    /// <summary>What every table demands of a column that holds one.</summary>
    internal const string Check = "role IN ('viewer', 'helper', 'brewer', 'owner')";

    public static string Of(Role role) =>
        role switch
        {
            Role.Viewer => "viewer",
            Role.Helper => "helper",
            Role.Brewer => "brewer",
            _ => "owner",
        };

    /// <exception cref="ArgumentOutOfRangeException">No such role.</exception>
    public static Role Read(string name) =>
        name switch
        {
            "viewer" => Role.Viewer,
            "helper" => Role.Helper,
            "brewer" => Role.Brewer,
            "owner" => Role.Owner,
            _ => throw new ArgumentOutOfRangeException(nameof(name), name, "Expected viewer, helper, brewer or owner."),
        };
}
