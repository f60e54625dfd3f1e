using BrewFloor.Domain.House;
using BrewFloor.Store.Log;
using Npgsql;
using UnitsNet;

namespace BrewFloor.Store.House;

/// <summary>The house rules as last read. The database is asked every time, but sends them only when they are others.</summary>
public sealed class RulesOnHand
{
    /// <summary>Its one parameter is the version on hand.</summary>
    internal const string Question = """
        SELECT h.version, s.zone, s.altitude_m, CASE WHEN h.version <> $1 THEN h.rules END
        FROM site s, (SELECT version, rules FROM house_rules ORDER BY version DESC LIMIT 1) h
        """;

    private volatile HouseRules? _rules;

    /// <summary>The site's time zone as last read.</summary>
    public TimeZoneInfo Zone => _rules?.Zone ?? TimeZoneInfo.Utc;

    /// <summary>Of the site, as last read.</summary>
    public Length Altitude => _rules?.Altitude ?? Length.Zero;

    internal int Version => _rules?.Version ?? 0;

    /// <summary>From the row that answers <see cref="Question"/>.</summary>
    internal HouseRules Read(NpgsqlDataReader reader)
    {
        var (version, zone, altitude) = (reader.GetInt32(0), reader.GetString(1), reader.GetDouble(2));
        var known = _rules;
        if (reader.TextOrNull(3) is { } json)
        {
            known = FloorJson.Read<HouseRules>(json);
        }
        else if (
            string.Equals(known!.Zone.Id, zone, StringComparison.Ordinal) && known.Altitude.Meters.Equals(altitude)
        )
        {
            return known;
        }

        return _rules = known with
        {
            Version = version,
            Zone = TimeZoneInfo.FindSystemTimeZoneById(zone),
            Altitude = Length.FromMeters(altitude),
        };
    }
}
