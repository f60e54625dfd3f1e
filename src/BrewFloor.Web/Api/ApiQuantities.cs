using System.Text.Json.Nodes;
using BrewFloor.Web.Units;
using UnitsNet;

namespace BrewFloor.Web.Api;

/// <summary>A quantity that cannot be read; the message is a sentence.</summary>
public sealed class UnreadableException(string place, string message) : Exception(message)
{
    /// <summary>Where in the body it stands.</summary>
    public string Field { get; } = place;
}

/// <summary>Quantities are objects with a unit outside, and numbers in one fixed unit, named by the key, inside.</summary>
/// <remarks><c>"volume": {"value": 20, "unit": "hL"}</c> becomes <c>"volume_l": 2000</c>, and the way it was said is kept as typed.</remarks>
public static class ApiQuantities
{
    private static readonly (string Suffix, string Unit)[] Stored =
    [
        ("_kpa_gauge", "kPa"),
        ("_g_ml", "g/mL"),
        ("_l", "L"),
        ("_mm", "mm"),
        ("_c", "°C"),
        ("_g", "g"),
        ("_deg", "deg"),
    ];

    /// <summary>The stored form of what a program sent.</summary>
    /// <exception cref="UnreadableException">A unit that isn't known, or a value that is no number.</exception>
    public static JsonObject ToStored(JsonObject sent, JsonObject typed, string path = "")
    {
        var stored = new JsonObject();
        foreach (var (key, value) in sent)
        {
            var here = path.Length == 0 ? key : $"{path}.{key}";
            switch (value)
            {
                case JsonObject quantity when IsQuantity(quantity):
                    var (suffix, number, text) = Read(quantity, here);
                    stored[key + suffix] = number;
                    typed[here + suffix] = text;
                    break;
                case JsonObject inner:
                    stored[key] = ToStored(inner, typed, here);
                    break;
                case JsonArray items:
                    stored[key] = new JsonArray([.. items.Select((item, i) => Item(item, typed, $"{here}.{i}"))]);
                    break;
                default:
                    stored[key] = value?.DeepClone();
                    break;
            }
        }

        return stored;
    }

    /// <summary>What is shown of a stored payload or state: every key that ends in a unit becomes an object with it.</summary>
    public static JsonNode? ToShown(JsonNode? stored) =>
        stored switch
        {
            JsonObject inner => Shown(inner),
            JsonArray items => new JsonArray([.. items.Select(ToShown)]),
            _ => stored?.DeepClone(),
        };

    private static JsonObject Shown(JsonObject stored)
    {
        var shown = new JsonObject();
        foreach (var (key, value) in stored)
        {
            var unit = Array.Find(Stored, unit => key.EndsWith(unit.Suffix, StringComparison.Ordinal));
            if (unit.Suffix is not null && value is JsonValue number && number.TryGetValue<double>(out var read))
            {
                shown[key[..^unit.Suffix.Length]] = new JsonObject { ["value"] = read, ["unit"] = unit.Unit };
            }
            else
            {
                shown[key] = ToShown(value);
            }
        }

        return shown;
    }

    private static JsonNode? Item(JsonNode? item, JsonObject typed, string path) =>
        item is JsonObject inner ? ToStored(inner, typed, path) : item?.DeepClone();

    private static bool IsQuantity(JsonObject json) =>
        json.Count == 2 && json.ContainsKey("value") && json.ContainsKey("unit");

    private static (string Suffix, double Number, string Text) Read(JsonObject quantity, string path)
    {
        if (
            quantity["value"] is not JsonValue value
            || !value.TryGetValue<double>(out var number)
            || !double.IsFinite(number)
        )
        {
            throw new UnreadableException(path, "The value must be a number.");
        }

        var unit = quantity["unit"] is JsonValue text && text.TryGetValue<string>(out var symbol) ? symbol : "";
        var (suffix, stored) =
            In(unit, number) ?? throw new UnreadableException(path, $"\"{unit}\" is not a unit known here.");
        return (suffix, stored, FormattableString.Invariant($"{number} {unit}"));
    }

    private static (string Suffix, double Number)? In(string unit, double number) =>
        UnitSymbols.Volumes.TryGetValue(unit, out var volume) ? ("_l", Volume.From(number, volume).Liters)
        : UnitSymbols.Temperatures.TryGetValue(unit, out var temperature)
            ? ("_c", Temperature.From(number, temperature).DegreesCelsius)
        : UnitSymbols.Pressures.TryGetValue(unit, out var pressure)
            ? ("_kpa_gauge", Pressure.From(number, pressure).Kilopascals)
        : UnitSymbols.Lengths.TryGetValue(unit, out var length) ? ("_mm", Length.From(number, length).Millimeters)
        : UnitSymbols.Masses.TryGetValue(unit, out var mass) ? ("_g", Mass.From(number, mass).Grams)
        : UnitSymbols.Durations.TryGetValue(unit, out var duration) ? ("", Duration.From(number, duration).Minutes)
        : unit is "g/mL" ? ("_g_ml", number)
        : null;
}
