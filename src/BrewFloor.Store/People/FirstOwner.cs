using BrewFloor.Domain.People;
using BrewFloor.Store.House;
using Microsoft.EntityFrameworkCore;

namespace BrewFloor.Store.People;

/// <summary>The first owner of a floor: whoever claims it first, and nobody after.</summary>
public sealed class FirstOwner(IDbContextFactory<FloorDb> databases, TimeProvider clock)
{
    private const long BeingClaimed = 0x4f776e65; // any number that no other advisory lock of ours uses

    public async Task<bool> ExistsAsync(CancellationToken stop)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        return await ExistsAsync(db, stop);
    }

    /// <summary>Makes the owner and says where the floor is; of any number at once exactly one succeeds.</summary>
    /// <param name="preferences">JSON as the pages keep it.</param>
    /// <returns>Null: somebody was first.</returns>
    public async Task<Person?> ClaimAsync(
        string name,
        string passwordHash,
        string preferences,
        Site site,
        CancellationToken stop
    )
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        await using var transaction = await db.Database.BeginTransactionAsync(stop);
        await db.Database.ExecuteSqlAsync($"SELECT pg_advisory_xact_lock({BeingClaimed})", stop);
        if (await ExistsAsync(db, stop))
        {
            return null;
        }

        var row = new PersonRow
        {
            Id = Guid.CreateVersion7(),
            Name = name.Trim(),
            Role = RoleNames.Of(Role.Owner),
            PasswordHash = passwordHash,
            SecurityStamp = Guid.CreateVersion7(),
            Preferences = preferences,
            CreatedAt = clock.GetUtcNow(),
        };
        db.People.Add(row);
        await db.SaveChangesAsync(stop);
        await db
            .Sites.Where(s => s.Id == 1)
            .ExecuteUpdateAsync(
                set =>
                    set.SetProperty(s => s.Name, site.Name)
                        .SetProperty(s => s.Zone, site.Zone)
                        .SetProperty(s => s.AltitudeM, site.AltitudeM)
                        .SetProperty(s => s.Version, s => s.Version + 1),
                stop
            );
        await transaction.CommitAsync(stop);
        return Accounts.ToPerson(row);
    }

    private static Task<bool> ExistsAsync(FloorDb db, CancellationToken stop) =>
        db.People.AnyAsync(person => person.Role == "owner" && person.PasswordHash != null, stop);
}
