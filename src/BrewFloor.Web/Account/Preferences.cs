using System.Text.Json;
using BrewFloor.Store.People;
using BrewFloor.Web.Units;

namespace BrewFloor.Web.Account;

/// <summary>What a person chose for themselves, as kept with them.</summary>
public sealed record Preferences(string? Units)
{
    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web);

    public static Preferences Of(Person person) =>
        JsonSerializer.Deserialize<Preferences>(person.Preferences, Json) ?? new Preferences(Units: null);

    public static string Text(ReadingUnits units) => JsonSerializer.Serialize(new Preferences(units.ToString()), Json);
}
