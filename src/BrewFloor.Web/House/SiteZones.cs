namespace BrewFloor.Web.House;

/// <summary>Time zones somebody may choose: IANA names, which are known everywhere.</summary>
internal static class SiteZones
{
    public static readonly string[] All =
    [
        .. TimeZoneInfo
            .GetSystemTimeZones()
            .Select(zone => zone.Id)
            .Where(id => id.Contains('/', StringComparison.Ordinal) || id is "UTC")
            .Order(StringComparer.Ordinal),
    ];
}
