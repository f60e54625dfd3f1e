using System.Text.Json;
using BrewFloor.Store.People;
using BrewFloor.Web.Shell;
using BrewFloor.Web.Units;

namespace BrewFloor.Web.Account;

/// <summary>What a person chose for themselves, as kept with them.</summary>
/// <param name="Units">As <see cref="ReadingUnits.ToString"/> writes them; null: the metric ones.</param>
/// <param name="Language">The code of one of ours; null: whatever the browser asks for.</param>
public sealed record Preferences(string? Units, string? Language = null)
{
    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web);

    public static Preferences Of(Person person) =>
        JsonSerializer.Deserialize<Preferences>(person.Preferences, Json) ?? new Preferences(Units: null);

    public static string Text(ReadingUnits units, Language? language = null) =>
        JsonSerializer.Serialize(new Preferences(units.ToString(), language?.Code), Json);
}
