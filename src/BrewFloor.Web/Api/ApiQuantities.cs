using System.Globalization;
using System.Text.Json.Nodes;
using BrewFloor.Brewing;
using BrewFloor.Brewing.Carbonation;
using BrewFloor.Brewing.Extract;
using BrewFloor.Domain.Items;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Yeast;
using BrewFloor.Store.Log;
using BrewFloor.Web.Units;
using UnitsNet;

namespace BrewFloor.Web.Api;

/// <summary>Quantities are objects with a unit outside, and numbers in one fixed unit, named by the key, inside.</summary>
/// <remarks><c>"volume": {"value": 20, "unit": "hL"}</c> is <c>"volume_l": 2000</c>, and the way it was said is kept as typed.</remarks>
internal static class ApiQuantities
{
    private const string Kelvin = "K";
    private const string Density = "g/mL";
    private const string Degrees = "deg";

    /// <summary>Whether a type is measured: written with a unit.</summary>
    public static bool Are(Type type) => UnitsOf(type).Any();

    /// <summary>The symbols that programs may use for it; the first is the one they are shown.</summary>
    public static IEnumerable<string> UnitsOf(Type type) =>
        type == typeof(Volume) ? UnitSymbols.Volumes.Keys.OrderByDescending(unit => unit is "L")
        : type == typeof(Temperature) ? UnitSymbols.Temperatures.Keys.OrderByDescending(unit => unit is "°C")
        : type == typeof(Pressure) ? UnitSymbols.Pressures.Keys.OrderByDescending(unit => unit is "kPa")
        : type == typeof(Length) ? UnitSymbols.Lengths.Keys.OrderByDescending(unit => unit is "mm")
        : type == typeof(Mass) ? UnitSymbols.Masses.Keys.OrderByDescending(unit => unit is "g")
        : type == typeof(Duration) ? UnitSymbols.Durations.Keys.OrderByDescending(unit => unit is "min")
        : type == typeof(SpecificGravity) ? UnitSymbols.Gravities.Keys.OrderByDescending(unit => unit is "SG")
        : type == typeof(CarbonDioxideContent) ? UnitSymbols.CarbonDioxide.Keys.OrderByDescending(unit => unit is "g/L")
        : type == typeof(YeastAmount)
            ? UnitSymbols.Volumes.Keys.Concat(UnitSymbols.Masses.Keys).OrderByDescending(unit => unit is "mL")
        : type == typeof(StockAmount) ? [UnitSymbols.Pieces, .. UnitSymbols.Masses.Keys, .. UnitSymbols.Volumes.Keys]
        : type == typeof(Density) ? [Density]
        : type == typeof(Angle) ? [Degrees]
        : type == typeof(TimeSpan) ? ["h"]
        : [];

    public static JsonObject Shown(double value, string unit) => new() { ["value"] = value, ["unit"] = unit };

    /// <summary>What is shown of a stored quantity.</summary>
    public static JsonNode Shown(JsonNode stored, Type type) =>
        type == typeof(YeastAmount)
            ? stored["g"] is { } grams
                ? Shown(grams.GetValue<double>(), "g")
                : Shown(stored["ml"]!.GetValue<double>(), "mL")
            : type == typeof(StockAmount)
                ? stored["pieces"] is { } pieces
                    ? Shown(pieces.GetValue<double>(), UnitSymbols.Pieces)
                    : Shown(stored, typeof(YeastAmount))
                : Shown(stored.GetValue<double>(), UnitsOf(type).First());

    /// <summary>The stored form of what a program sent, and how it said it.</summary>
    /// <exception cref="UnreadableException">No value, no unit, a unit of something else, a number out of all bounds.</exception>
    public static (JsonNode Stored, string Typed) Read(JsonNode sent, Type type, string field)
    {
        if (
            sent is not JsonObject quantity
            || quantity.Count != 2
            || !quantity.ContainsKey("value")
            || quantity["unit"] is not JsonValue symbol
            || !symbol.TryGetValue<string>(out var unit)
        )
        {
            throw new UnreadableException(field, "quantity-wanted", Units(type));
        }

        var value = Numbers.Double(quantity["value"], field);
        if (!UnitsOf(type).Contains(unit, StringComparer.Ordinal))
        {
            throw new UnreadableException(field, "unit-unknown", new Number("unit", unit), Units(type));
        }

        return (In(type, value, unit, field), string.Create(CultureInfo.InvariantCulture, $"{value} {unit}"));
    }

    private static Number Units(Type type) => new("units", string.Join(", ", UnitsOf(type)));

    private static JsonNode In(Type type, double value, string unit, string field) =>
        type == typeof(StockAmount) && string.Equals(unit, UnitSymbols.Pieces, StringComparison.Ordinal)
            ? new JsonObject { ["pieces"] = Pieces(value, field) }
        : type == typeof(YeastAmount) || type == typeof(StockAmount)
            ? UnitSymbols.Masses.TryGetValue(unit, out var mass)
                    ? new JsonObject { ["g"] = Finite(Mass.From(value, mass).Grams, field) }
                : new JsonObject { ["ml"] = Finite(Volume.From(value, UnitSymbols.Volumes[unit]).Milliliters, field) }
        : type == typeof(SpecificGravity) ? Gravity(value, unit, field)
        : type == typeof(CarbonDioxideContent)
            ? Round(Accept(UnitSymbols.Gas(value, UnitSymbols.CarbonDioxide[unit]), field).ByWeight.GramsPerLiter, 4)
        : Finite(Plain(type, value, unit), field);

    private static double Plain(Type type, double value, string unit) =>
        type == typeof(Volume) ? Volume.From(value, UnitSymbols.Volumes[unit]).Liters
        : type == typeof(Temperature) ? Temperature.From(value, UnitSymbols.Temperatures[unit]).DegreesCelsius
        : type == typeof(Pressure) ? Pressure.From(value, UnitSymbols.Pressures[unit]).Kilopascals
        : type == typeof(Length) ? Length.From(value, UnitSymbols.Lengths[unit]).Millimeters
        : type == typeof(Mass) ? Mass.From(value, UnitSymbols.Masses[unit]).Grams
        : type == typeof(Duration) ? Duration.From(value, UnitSymbols.Durations[unit]).Minutes
        : value;

    private static JsonNode Gravity(double value, string unit, string field)
    {
        var gravity =
            UnitSymbols.Gravities[unit] is GravityUnit.Plato ? new DegreesPlato(value).ToGravity()
            : value is >= 0.98 and <= 1.20 ? SpecificGravity.Of(value)
            : new Refusal("out-of-range", "gravity", "0.980", "1.200");
        return Round(Accept(gravity, field).Value, 5);
    }

    private static T Accept<T>(Outcome<T> read, string field)
        where T : notnull =>
        read.Gives(out var value)
            ? value
            : throw new UnreadableException(
                field,
                "number-outside",
                new("from", read.Refusal!.From),
                new("to", read.Refusal.To)
            );

    private static JsonNode Round(double value, int decimals) => Math.Round(value, decimals);

    private static int Pieces(double value, string field) =>
        value == Math.Truncate(value) && Math.Abs(value) <= int.MaxValue
            ? (int)value
            : throw new UnreadableException(field, "whole-wanted");

    private static double Finite(double value, string field) =>
        double.IsFinite(value) ? value : throw new UnreadableException(field, "number-wanted");

    /// <summary>A number that an objection or a job stands on.</summary>
    public static JsonNode? Shown(Number number)
    {
        var stored = JsonNode.Parse(FloorJson.Of(number))!.AsObject();
        var value = stored.FirstOrDefault(field => field.Key is not "name");
        var unit = value.Key switch
        {
            "l" => "L",
            "ml" => "mL",
            "pieces" => UnitSymbols.Pieces,
            "mm" => "mm",
            "c" => "°C",
            "k" => Kelvin,
            "kpa_gauge" => "kPa",
            "g" => "g",
            "minutes" => "min",
            "hours" => "h",
            "sg" => "SG",
            "p" => "°P",
            "g_l" => "g/L",
            _ => null,
        };
        return unit is null ? value.Value?.DeepClone() : Shown(value.Value!.GetValue<double>(), unit);
    }

    /// <summary>By name.</summary>
    public static JsonObject Shown(IEnumerable<Number> numbers) =>
        new(
            numbers
                .DistinctBy(number => number.Name, StringComparer.Ordinal)
                .Select(n => KeyValuePair.Create(n.Name, Shown(n)))
        );
}
