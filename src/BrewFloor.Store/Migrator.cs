using BrewFloor.Domain.Log;
using BrewFloor.Store.House;
using BrewFloor.Store.Log;
using BrewFloor.Store.PrivateServer;
using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace BrewFloor.Store;

/// <summary>Brings the tables to this program's shape at start. Two instances at once do it one after the other.</summary>
public static class Migrator
{
    private const long OneAtATime = 1114793336; // any number that no other advisory lock of ours uses

    // The app reads and writes; it makes no tables, and the log it only reads and appends to.
    private const string Grants = $"""
        DO $$ BEGIN
            IF EXISTS (SELECT FROM pg_roles WHERE rolname = '{ApplicationRole.Name}') THEN
                GRANT USAGE ON SCHEMA public TO {ApplicationRole.Name};
                GRANT SELECT, INSERT, UPDATE, DELETE ON ALL TABLES IN SCHEMA public TO {ApplicationRole.Name};
                GRANT USAGE ON ALL SEQUENCES IN SCHEMA public TO {ApplicationRole.Name};
                REVOKE UPDATE, DELETE ON entries, entry_kinds, thing_changes, house_rules FROM {ApplicationRole.Name};
                IF to_regclass('security_events') IS NOT NULL THEN -- a schema from before it can be asked for
                    REVOKE UPDATE, DELETE ON security_events FROM {ApplicationRole.Name};
                END IF;
                REVOKE INSERT, UPDATE, DELETE ON "__EFMigrationsHistory" FROM {ApplicationRole.Name};
            END IF;
        END $$
        """;

    /// <param name="owner">As the role that owns the tables.</param>
    /// <param name="zone">Where the floor is, for a new house; an IANA name.</param>
    /// <exception cref="UnknownKindsException">The log holds entries that this program doesn't know: an older one was started.</exception>
    public static Task MigrateAsync(string owner, string zone, CancellationToken stop) =>
        MigrateAsync(owner, zone, target: null, stop);

    /// <param name="target">As far as this migration; null: the newest.</param>
    internal static async Task MigrateAsync(string owner, string zone, string? target, CancellationToken stop)
    {
        await using var database = NpgsqlDataSource.Create(
            new NpgsqlConnectionStringBuilder(owner) { Pooling = false }.ConnectionString
        );
        await using var gate = await database.OpenConnectionAsync(stop);
        await gate.DoAsync("SELECT pg_advisory_lock($1)", stop, OneAtATime); // until this connection closes
        await using var db = new FloorDb(Options(database));
        await db.Database.MigrateAsync(target, stop);
        await gate.DoAsync(Grants, stop);
        await RefuseUnknownAsync(db, stop);
        await HouseKeeping.BeginAsync(gate, zone, stop);
        await Refolding.OldStatesAsync(database, stop);
    }

    private static DbContextOptions<FloorDb> Options(NpgsqlDataSource database)
    {
        var options = new DbContextOptionsBuilder<FloorDb>();
        StoreSetup.Options(options, database);
        return options.Options;
    }

    private static async Task RefuseUnknownAsync(FloorDb db, CancellationToken stop)
    {
        var stored = await db.Set<EntryKindRow>().AsNoTracking().ToListAsync(stop);
        string[] unknown =
        [
            .. stored
                .Where(k => !EntryKinds.ByName.ContainsKey(k.Kind) || k.Version > EntryJson.VersionOf(k.Kind))
                .Select(k => $"{k.Kind} v{k.Version}")
                .Order(StringComparer.Ordinal),
        ];
        if (unknown.Length > 0)
        {
            throw new UnknownKindsException(string.Join(", ", unknown));
        }
    }
}

/// <summary>The log holds kinds of entries that this program doesn't know; it must not write beside them.</summary>
public sealed class UnknownKindsException(string kinds)
    : Exception($"The log holds entries that this version doesn't know ({kinds}). Start the newer version again.")
{
    public string Kinds { get; } = kinds;
}
