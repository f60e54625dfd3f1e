using BrewFloor.Domain;
using Microsoft.EntityFrameworkCore;

namespace BrewFloor.Store.People;

/// <summary>One browser that somebody is signed in with.</summary>
/// <param name="Device">In a word: "Phone".</param>
/// <param name="Address">Where it was last seen from.</param>
public sealed record Session(
    Guid Id,
    Guid PersonId,
    string Device,
    string Address,
    DateTimeOffset BeganAt,
    DateTimeOffset SeenAt
)
{
    /// <summary>In characters, of device and address.</summary>
    public const int LongestText = 80;
}

/// <summary>Where people are signed in. Every instance asks here, so that an end counts everywhere.</summary>
public sealed class Sessions(IDbContextFactory<FloorDb> databases)
{
    public async Task<Guid> BeginAsync(
        Guid person,
        string device,
        string address,
        DateTimeOffset now,
        CancellationToken stop
    )
    {
        var row = new SessionRow
        {
            Id = Guid.CreateVersion7(),
            PersonId = person,
            Device = Cut(device),
            Address = Cut(address),
            BeganAt = now.ToUniversalTime(),
            SeenAt = now.ToUniversalTime(),
        };
        await using var db = await databases.CreateDbContextAsync(stop);
        db.Add(row);
        await db.SaveChangesAsync(stop);
        return row.Id;
    }

    /// <summary>Seen again.</summary>
    /// <returns>False: it was ended, or never was.</returns>
    public async Task<bool> SeenAsync(Guid id, Guid person, string address, DateTimeOffset now, CancellationToken stop)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        var (seen, from) = (now.ToUniversalTime(), Cut(address));
        return await db.Set<SessionRow>()
                .Where(row => row.Id == id && row.PersonId == person && row.EndedAt == null)
                .ExecuteUpdateAsync(
                    set => set.SetProperty(row => row.SeenAt, seen).SetProperty(row => row.Address, from),
                    stop
                ) > 0;
    }

    public async Task<bool> StandsAsync(Guid id, CancellationToken stop)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        return await db.Set<SessionRow>()
            .AnyAsync(
                row =>
                    row.Id == id
                    && row.EndedAt == null
                    && db.People.Any(person => person.Id == row.PersonId && person.IsActive),
                stop
            );
    }

    /// <summary>Those that stand, last seen first.</summary>
    /// <param name="since">Longer ago than a cookie lasts: nobody can come back with it.</param>
    public async Task<Listed<Session>> OfAsync(Guid person, DateTimeOffset since, CancellationToken stop)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        var from = since.ToUniversalTime();
        var rows = await db.Set<SessionRow>()
            .AsNoTracking()
            .Where(row => row.PersonId == person && row.EndedAt == null && row.SeenAt >= from)
            .OrderByDescending(row => row.SeenAt)
            .ToListAsync(stop);
        return
        [
            .. rows.Select(row => new Session(row.Id, row.PersonId, row.Device, row.Address, row.BeganAt, row.SeenAt)),
        ];
    }

    /// <summary>Ends one of a person's sessions, or all but one.</summary>
    /// <param name="only">Null: every one.</param>
    /// <param name="but">Stays.</param>
    public async Task EndAsync(Guid person, Guid? only, Guid? but, DateTimeOffset now, CancellationToken stop)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        var at = now.ToUniversalTime();
        await db.Set<SessionRow>()
            .Where(row =>
                row.PersonId == person
                && row.EndedAt == null
                && (only == null || row.Id == only)
                && (but == null || row.Id != but)
            )
            .ExecuteUpdateAsync(set => set.SetProperty(row => row.EndedAt, at), stop);
        await Accounts.TellAsync(db, person, stop);
    }

    private static string Cut(string text) => text.Length <= Session.LongestText ? text : text[..Session.LongestText];
}
