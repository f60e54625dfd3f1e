using BrewFloor.Domain;
using BrewFloor.Domain.House;
using BrewFloor.Store.Log;
using Npgsql;

namespace BrewFloor.Store.House;

/// <summary>The numbers the club may change, and where the floor is; each change is kept.</summary>
public sealed class HouseKeeping(NpgsqlDataSource database, RulesOnHand onHand)
{
    public async Task<HouseRules> RulesAsync(CancellationToken stop)
    {
        await using var connection = await database.OpenConnectionAsync(stop);
        await using var batch = connection.CreateBatch();
        batch.Add(RulesOnHand.Question, onHand.Version);
        await using var reader = await batch.ExecuteReaderAsync(stop);
        await reader.ReadAsync(stop);
        return onHand.Read(reader);
    }

    /// <summary>Every version of the rules, the newest first.</summary>
    public async Task<Listed<HouseVersion>> HistoryAsync(CancellationToken stop)
    {
        await using var connection = await database.OpenConnectionAsync(stop);
        await using var batch = connection.CreateBatch();
        batch.Add(
            """
            SELECT h.version, h.at, p.name, h.rules FROM house_rules h LEFT JOIN people p ON p.id = h.by
            ORDER BY h.version DESC
            """
        );
        await using var reader = await batch.ExecuteReaderAsync(stop);
        var versions = new List<HouseVersion>();
        while (await reader.ReadAsync(stop))
        {
            var rules = FloorJson.Read<HouseRules>(reader.GetString(3));
            versions.Add(new(reader.GetInt32(0), reader.At(1), reader.TextOrNull(2), rules));
        }

        return [.. versions];
    }

    /// <summary>Changes the rules; open jobs are looked at again by the next sweep, closed ones stay as they are.</summary>
    /// <param name="rules">With the version they were changed from.</param>
    /// <returns>False: somebody else changed them meanwhile.</returns>
    public async Task<bool> ChangeAsync(HouseRules rules, Guid by, CancellationToken stop)
    {
        await using var connection = await database.OpenConnectionAsync(stop);
        await using var batch = connection.CreateBatch();
        batch.Add(
            """
            INSERT INTO house_rules (version, rules, at, by)
            SELECT $1 + 1, $2, clock_timestamp(), $3 WHERE $1 = (SELECT max(version) FROM house_rules)
            ON CONFLICT DO NOTHING RETURNING version
            """,
            rules.Version,
            Statements.Jsonb(FloorJson.Of(rules)),
            by
        );
        batch.Add("UPDATE states SET next_edge = '-infinity'");
        batch.Add("SELECT pg_notify('floor', 'thing house-rules ' || $1)", rules.Version + 1);
        await using var reader = await batch.ExecuteReaderAsync(stop);
        return await reader.ReadAsync(stop);
    }

    public async Task<Site> SiteAsync(CancellationToken stop)
    {
        await using var connection = await database.OpenConnectionAsync(stop);
        await using var batch = connection.CreateBatch();
        batch.Add("SELECT name, zone, altitude_m, version, address FROM site");
        await using var reader = await batch.ExecuteReaderAsync(stop);
        await reader.ReadAsync(stop);
        return new(reader.GetString(0), reader.GetString(1), reader.GetDouble(2), reader.GetInt32(3))
        {
            Address = reader.TextOrNull(4),
        };
    }

    /// <param name="site">With the version it was changed from.</param>
    /// <returns>False: somebody else changed it meanwhile.</returns>
    public async Task<bool> ChangeAsync(Site site, CancellationToken stop)
    {
        await using var connection = await database.OpenConnectionAsync(stop);
        await using var batch = connection.CreateBatch();
        batch.Add(
            """
            UPDATE site SET name = $1, zone = $2, altitude_m = $3, address = $4, version = version + 1
            WHERE version = $5 RETURNING version
            """,
            site.Name,
            site.Zone,
            site.AltitudeM,
            Statements.Text(site.Address),
            site.Version
        );
        batch.Add("UPDATE states SET next_edge = '-infinity'");
        batch.Add("SELECT pg_notify('floor', 'thing site 1')");
        await using var reader = await batch.ExecuteReaderAsync(stop);
        return await reader.ReadAsync(stop);
    }

    /// <summary>What a new house begins with.</summary>
    internal static async Task BeginAsync(NpgsqlConnection connection, string zone, CancellationToken stop)
    {
        var defaults = HouseRules.Defaults(TimeZoneInfo.FindSystemTimeZoneById(zone));
        await using var batch = connection.CreateBatch();
        batch.Add(
            "INSERT INTO house_rules (version, rules, at) SELECT 1, $1, clock_timestamp() WHERE NOT EXISTS (SELECT FROM house_rules)",
            Statements.Jsonb(FloorJson.Of(defaults))
        );
        batch.Add(
            "INSERT INTO site (id, name, zone, altitude_m, version) VALUES (1, '', $1, 0, 1) ON CONFLICT DO NOTHING",
            zone
        );
        await batch.ExecuteNonQueryAsync(stop);
    }
}

/// <summary>The rules as they were from a moment on.</summary>
/// <param name="By">Whose name; null: what the house began with.</param>
public sealed record HouseVersion(int Version, DateTimeOffset At, string? By, HouseRules Rules);

/// <summary>Where the floor is.</summary>
/// <param name="Zone">An IANA name.</param>
/// <param name="AltitudeM">In m: what gauge pressure is measured against.</param>
public sealed record Site(string Name, string Zone, double AltitudeM, int Version)
{
    /// <summary>In m: below every mine a brewery was ever in, and above every town. The table has the same check.</summary>
    public const double Lowest = -500;

    /// <inheritdoc cref="Lowest"/>
    public const double Highest = 6000;

    /// <summary>Where browsers open it, http or https, without a slash at its end. Null: nobody has said yet.</summary>
    public string? Address { get; init; }
}
