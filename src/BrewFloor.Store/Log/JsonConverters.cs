using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;
using BrewFloor.Brewing.Extract;
using BrewFloor.Domain;
using BrewFloor.Domain.Items;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Yeast;
using UnitsNet;

namespace BrewFloor.Store.Log;

/// <summary>A measured thing as a number in the stored unit.</summary>
internal sealed class QuantityJson<T>(Func<double, T> of, Func<T, double> value) : JsonConverter<T>
    where T : struct
{
    public override T Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        of(reader.GetDouble());

    public override void Write(Utf8JsonWriter writer, T value1, JsonSerializerOptions options) =>
        writer.WriteNumberValue(value(value1));
}

/// <summary>An instant in UTC, to the microsecond.</summary>
internal sealed class InstantJson : JsonConverter<DateTimeOffset>
{
    private const string Format = "yyyy-MM-dd'T'HH:mm:ss.FFFFFF'Z'";

    public static string Text(DateTimeOffset at) => at.ToUniversalTime().ToString(Format, CultureInfo.InvariantCulture);

    public override DateTimeOffset Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        reader.GetDateTimeOffset().ToUniversalTime();

    public override void Write(Utf8JsonWriter writer, DateTimeOffset value, JsonSerializerOptions options) =>
        writer.WriteStringValue(Text(value));
}

/// <summary>A length of time in hours.</summary>
internal sealed class HoursJson : JsonConverter<TimeSpan>
{
    public override TimeSpan Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        TimeSpan.FromHours(reader.GetDouble());

    public override void Write(Utf8JsonWriter writer, TimeSpan value, JsonSerializerOptions options) =>
        writer.WriteNumberValue(value.TotalHours);
}

/// <summary>A gravity as the ratio, five decimals.</summary>
internal sealed class GravityJson : JsonConverter<SpecificGravity>
{
    public override SpecificGravity Read(
        ref Utf8JsonReader reader,
        Type typeToConvert,
        JsonSerializerOptions options
    ) => SpecificGravity.Of(reader.GetDouble());

    public override void Write(Utf8JsonWriter writer, SpecificGravity value, JsonSerializerOptions options) =>
        writer.WriteNumberValue(Math.Round(value.Value, 5));
}

/// <summary><c>{"ml": 300}</c> of slurry or <c>{"g": 11}</c> of a pack.</summary>
internal sealed class YeastAmountJson : JsonConverter<YeastAmount>
{
    public override YeastAmount Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        using var json = JsonDocument.ParseValue(ref reader);
        return json.RootElement.TryGetProperty("g", out var grams) ? YeastAmount.Of(Mass.FromGrams(grams.GetDouble()))
            : json.RootElement.TryGetProperty("ml", out var ml) ? YeastAmount.Of(Volume.FromMilliliters(ml.GetDouble()))
            : throw new JsonException("Expected an amount of yeast in ml or g.");
    }

    public override void Write(Utf8JsonWriter writer, YeastAmount value, JsonSerializerOptions options)
    {
        writer.WriteStartObject();
        writer.WriteNumber(value.IsMass ? "g" : "ml", value.Value);
        writer.WriteEndObject();
    }
}

/// <summary><c>{"pieces": 3}</c>, <c>{"g": 500}</c> or <c>{"ml": 250}</c> of an item.</summary>
internal sealed class StockAmountJson : JsonConverter<StockAmount>
{
    public override StockAmount Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        using var json = JsonDocument.ParseValue(ref reader);
        return json.RootElement.TryGetProperty("pieces", out var pieces) ? StockAmount.Of(pieces.GetInt32())
            : json.RootElement.TryGetProperty("g", out var grams) ? StockAmount.Of(Mass.FromGrams(grams.GetDouble()))
            : json.RootElement.TryGetProperty("ml", out var ml) ? StockAmount.Of(Volume.FromMilliliters(ml.GetDouble()))
            : throw new JsonException("Expected an amount in pieces, g or ml.");
    }

    public override void Write(Utf8JsonWriter writer, StockAmount value, JsonSerializerOptions options)
    {
        writer.WriteStartObject();
        WriteTo(writer, value);
        writer.WriteEndObject();
    }

    /// <summary>The measure as the key.</summary>
    public static void WriteTo(Utf8JsonWriter writer, StockAmount value)
    {
        switch (value.Measure)
        {
            case StockMeasure.Pieces:
                writer.WriteNumber("pieces", (int)value.Value);
                break;
            case StockMeasure.Mass:
                writer.WriteNumber("g", value.Value);
                break;
            default:
                writer.WriteNumber("ml", value.Value);
                break;
        }
    }
}

/// <summary>What a person typed, by field: <c>{"volume_l": "20 hL"}</c>.</summary>
internal sealed class TypedJson : JsonConverter<Listed<TypedText>>
{
    public override Listed<TypedText> Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        using var json = JsonDocument.ParseValue(ref reader);
        return [.. json.RootElement.EnumerateObject().Select(p => new TypedText(p.Name, p.Value.GetString() ?? ""))];
    }

    public override void Write(Utf8JsonWriter writer, Listed<TypedText> value, JsonSerializerOptions options)
    {
        writer.WriteStartObject();
        foreach (var (field, text) in value.OrderBy(t => t.Field, StringComparer.Ordinal))
        {
            writer.WriteString(field, text);
        }

        writer.WriteEndObject();
    }
}

/// <summary>A list as an array.</summary>
internal sealed class ListedJson : JsonConverterFactory
{
    public static bool IsList(Type type) => type.IsGenericType && type.GetGenericTypeDefinition() == typeof(Listed<>);

    public override bool CanConvert(Type typeToConvert) => IsList(typeToConvert);

    public override JsonConverter CreateConverter(Type typeToConvert, JsonSerializerOptions options) =>
        (JsonConverter)
            Activator.CreateInstance(typeof(AsArray<>).MakeGenericType(typeToConvert.GetGenericArguments()))!;

    private sealed class AsArray<T> : JsonConverter<Listed<T>>
    {
        public override Listed<T> Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            [.. JsonSerializer.Deserialize<T[]>(ref reader, options) ?? []];

        public override void Write(Utf8JsonWriter writer, Listed<T> value, JsonSerializerOptions options) =>
            JsonSerializer.Serialize(writer, value.ToArray(), options);
    }
}
