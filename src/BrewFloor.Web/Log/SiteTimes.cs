using System.Globalization;
using BrewFloor.Brewing;

namespace BrewFloor.Web.Log;

/// <summary>Typed times are the site's: an ambiguous hour is the later one not in the future, a skipped one gets a sentence.</summary>
/// <param name="Zone">Of the site.</param>
/// <param name="Now">When the form was posted.</param>
/// <param name="Culture">Of the reader.</param>
public sealed record SiteTimes(TimeZoneInfo Zone, DateTimeOffset Now, CultureInfo Culture)
{
    private const string Minute = "yyyy-MM-dd'T'HH:mm";

    /// <summary>As a field of day and time wants it.</summary>
    public string Typed(DateTimeOffset at) =>
        TimeZoneInfo.ConvertTime(at, Zone).ToString(Minute, CultureInfo.InvariantCulture);

    /// <summary>Reads "2026-03-14T14:02", with or without seconds.</summary>
    /// <returns>The instant in UTC; refused: <c>not-a-moment</c>, or <c>skipped-hour</c> when clocks jumped over it.</returns>
    public Outcome<DateTimeOffset> Parse(string text)
    {
        if (
            !DateTime.TryParseExact(
                text,
                [Minute, Minute + "':'ss"],
                CultureInfo.InvariantCulture,
                DateTimeStyles.None,
                out var local
            )
        )
        {
            return new Refusal("not-a-moment", "when", "", "");
        }

        if (Zone.IsInvalidTime(local))
        {
            return new Refusal("skipped-hour", "when", text.Replace('T', ' '), "");
        }

        var offsets = Zone.IsAmbiguousTime(local) ? Zone.GetAmbiguousTimeOffsets(local) : [Zone.GetUtcOffset(local)];
        var instants = offsets.Select(offset => new DateTimeOffset(local, offset).ToUniversalTime()).Order().ToArray();
        return instants.LastOrDefault(instant => instant <= Now, instants[0]);
    }
}
