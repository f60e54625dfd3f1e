using BrewFloor.Brewing;
using BrewFloor.Store.House;

namespace BrewFloor.Web.House;

/// <summary>What keeps a place from being one: a zone nobody knows, a height where nobody brews.</summary>
internal static class PlaceProblem
{
    /// <param name="altitude">In m, as typed.</param>
    /// <returns>The key of the sentence; null when it can be used.</returns>
    public static string? With(string? zone, string? altitude) =>
        !SiteZones.All.Contains(zone, StringComparer.Ordinal) ? "refusal.unknown-choice"
        : !TypedNumber.Parse(altitude).Gives(out var metres) || metres is < Site.Lowest or > Site.Highest
            ? "setup-altitude-wrong"
        : null;
}
