using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using BrewFloor.Brewing.Carbonation;
using BrewFloor.Domain.House;
using BrewFloor.Domain.Log;
using UnitsNet;

namespace BrewFloor.Store.Log;

/// <summary>How the floor is written as JSON: snake_case keys, and a measured thing as a number whose key ends in its unit.</summary>
/// <remarks>
/// Nothing is lost and nothing is written twice: what is null or an empty list is left out, and what a record works out from
/// its other fields isn't stored.
/// </remarks>
public static class FloorJson
{
    public static readonly JsonSerializerOptions Options = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        Converters =
        {
            new JsonStringEnumConverter<Domain.Log.Level>(JsonNamingPolicy.SnakeCaseLower),
            new JsonStringEnumConverter(JsonNamingPolicy.KebabCaseLower),
            new InstantJson(),
            new HoursJson(),
            new GravityJson(),
            new QuantityJson<CarbonDioxideContent>(v => CarbonDioxideContent.OfGramsPerLitre(v).Value, InGramsPerLitre),
            new YeastAmountJson(),
            new StockAmountJson(),
            new NumberJson(),
            new TypedJson(),
            new StrappingJson(),
            new ReplacementJson(),
            new ListedJson(),
            new QuantityJson<Volume>(v => Volume.FromLiters(v), v => v.Liters),
            new QuantityJson<Length>(v => Length.FromMillimeters(v), v => v.Millimeters),
            new QuantityJson<Temperature>(v => Temperature.FromDegreesCelsius(v), v => v.DegreesCelsius),
            new QuantityJson<Pressure>(v => Pressure.FromKilopascals(v), v => v.Kilopascals),
            new QuantityJson<Mass>(v => Mass.FromGrams(v), v => v.Grams),
            new QuantityJson<Duration>(v => Duration.FromMinutes(v), v => v.Minutes),
            new QuantityJson<Density>(v => Density.FromGramsPerMilliliter(v), v => v.GramsPerMilliliter),
            new QuantityJson<Angle>(v => Angle.FromDegrees(v), v => v.Degrees),
        },
        TypeInfoResolver = new DefaultJsonTypeInfoResolver
        {
            Modifiers = { LeaveOutWhatIsWorkedOut, LeaveToColumns, LeaveOutEmptyLists, NameUnits },
        },
    };

    private static readonly Dictionary<Type, string> Units = new()
    {
        [typeof(Volume)] = "l",
        [typeof(Length)] = "mm",
        [typeof(Temperature)] = "c",
        [typeof(Pressure)] = "kpa_gauge",
        [typeof(Mass)] = "g",
        [typeof(Duration)] = "minutes",
        [typeof(Density)] = "g_ml",
        [typeof(Angle)] = "deg",
        [typeof(TimeSpan)] = "hours",
        [typeof(CarbonDioxideContent)] = "g_l",
    };

    private static readonly HashSet<string> EntryColumns = new(StringComparer.Ordinal)
    {
        "id",
        "at",
        "sent_at",
        "done_by",
        "note",
        "done_anyway",
    };

    /// <summary>Four decimals: finer than anybody measures.</summary>
    internal static double InGramsPerLitre(CarbonDioxideContent content) =>
        Math.Round(content.ByWeight.GramsPerLiter, 4);

    /// <summary>As the value's own type, whatever the declared one is.</summary>
    public static string Of(object value) => JsonSerializer.Serialize(value, value.GetType(), Options);

    /// <exception cref="JsonException">It is not what was written.</exception>
    public static T Read<T>(string json)
        where T : notnull =>
        JsonSerializer.Deserialize<T>(json, Options) ?? throw new JsonException($"No {typeof(T).Name} in it.");

    /// <summary>The unit that ends the key of a measured thing; <see langword="null"/> for anything else.</summary>
    public static string? UnitOf(Type type) => Units.GetValueOrDefault(Nullable.GetUnderlyingType(type) ?? type);

    private static void LeaveOutWhatIsWorkedOut(JsonTypeInfo type)
    {
        for (var i = type.Properties.Count - 1; i >= 0; i--)
        {
            if (type.Kind is JsonTypeInfoKind.Object && type.Properties[i].Set is null && IsOurs(type.Type))
            {
                type.Properties.RemoveAt(i);
            }
        }
    }

    private static void LeaveToColumns(JsonTypeInfo type)
    {
        var columns =
            type.Type.IsAssignableTo(typeof(LogEntry)) ? EntryColumns
            : type.Type == typeof(HouseRules) ? ["version", "zone", "altitude"]
            : [];
        foreach (var column in type.Properties.Where(p => columns.Contains(p.Name)))
        {
            column.ShouldSerialize = (_, _) => false;
        }
    }

    private static void LeaveOutEmptyLists(JsonTypeInfo type)
    {
        foreach (var list in type.Properties.Where(p => ListedJson.IsList(p.PropertyType)))
        {
            list.ShouldSerialize ??= (_, value) =>
                value is System.Collections.IEnumerable items && items.Cast<object>().Any();
        }
    }

    private static void NameUnits(JsonTypeInfo type)
    {
        foreach (var property in type.Properties)
        {
            // "minutes" says its unit already.
            if (
                UnitOf(property.PropertyType) is { } unit
                && !$"_{property.Name}".EndsWith($"_{unit}", StringComparison.Ordinal)
            )
            {
                property.Name += "_" + unit;
            }
        }
    }

    private static bool IsOurs(Type type) =>
        type.Assembly == typeof(LogEntry).Assembly || type.Assembly == typeof(FloorJson).Assembly;
}
