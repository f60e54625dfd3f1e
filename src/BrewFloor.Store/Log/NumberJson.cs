using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;
using BrewFloor.Brewing.Carbonation;
using BrewFloor.Brewing.Extract;
using BrewFloor.Domain.Items;
using BrewFloor.Domain.Log;
using UnitsNet;

namespace BrewFloor.Store.Log;

/// <summary>A number an objection or a job stands on: <c>{"name": "volume", "l": 2300}</c>. The second key says what it is.</summary>
internal sealed class NumberJson : JsonConverter<Number>
{
    public override Number Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        using var json = JsonDocument.ParseValue(ref reader);
        var name = json.RootElement.GetProperty("name").GetString()!;
        var values = json.RootElement.EnumerateObject().Where(p => p.Name is not "name").ToArray();
        return new(name, values is [var value] ? Value(value.Name, value.Value) : null);
    }

    public override void Write(Utf8JsonWriter writer, Number value, JsonSerializerOptions options)
    {
        writer.WriteStartObject();
        writer.WriteString("name", value.Name);
        if (value.Value is { } number)
        {
            Write(writer, number);
        }

        writer.WriteEndObject();
    }

    private static object? Value(string key, JsonElement json) =>
        key switch
        {
            "l" => Volume.FromLiters(json.GetDouble()),
            "mm" => Length.FromMillimeters(json.GetDouble()),
            "c" => Temperature.FromDegreesCelsius(json.GetDouble()),
            "k" => TemperatureDelta.FromKelvins(json.GetDouble()),
            "kpa_gauge" => Pressure.FromKilopascals(json.GetDouble()),
            "pieces" => StockAmount.Of(json.GetInt32()),
            "ml" => Volume.FromMilliliters(json.GetDouble()),
            "g" => Mass.FromGrams(json.GetDouble()),
            "minutes" => Duration.FromMinutes(json.GetDouble()),
            "hours" => TimeSpan.FromHours(json.GetDouble()),
            "sg" => SpecificGravity.Of(json.GetDouble()),
            "p" => new DegreesPlato(json.GetDouble()),
            "g_l" => CarbonDioxideContent.OfGramsPerLitre(json.GetDouble()).Value,
            "at" => json.GetDateTimeOffset().ToUniversalTime(),
            "on" => DateOnly.ParseExact(json.GetString()!, "O", CultureInfo.InvariantCulture),
            "whole" => json.GetInt32(),
            "number" => json.GetDouble(),
            _ => json.GetString(),
        };

    private static void Write(Utf8JsonWriter writer, object number)
    {
        switch (number)
        {
            case Volume v:
                writer.WriteNumber("l", v.Liters);
                break;
            case Length v:
                writer.WriteNumber("mm", v.Millimeters);
                break;
            case Temperature v:
                writer.WriteNumber("c", v.DegreesCelsius);
                break;
            case TemperatureDelta v:
                writer.WriteNumber("k", v.Kelvins);
                break;
            case Pressure v:
                writer.WriteNumber("kpa_gauge", v.Kilopascals);
                break;
            case Mass v:
                writer.WriteNumber("g", v.Grams);
                break;
            case Duration v:
                writer.WriteNumber("minutes", v.Minutes);
                break;
            default:
                WritePlain(writer, number);
                break;
        }
    }

    private static void WritePlain(Utf8JsonWriter writer, object number)
    {
        switch (number)
        {
            case StockAmount v:
                StockAmountJson.WriteTo(writer, v);
                break;
            case TimeSpan v:
                writer.WriteNumber("hours", v.TotalHours);
                break;
            case SpecificGravity v:
                writer.WriteNumber("sg", Math.Round(v.Value, 5));
                break;
            case DegreesPlato v:
                writer.WriteNumber("p", v.Value);
                break;
            case CarbonDioxideContent v:
                writer.WriteNumber("g_l", FloorJson.InGramsPerLitre(v));
                break;
            case DateTimeOffset v:
                writer.WriteString("at", InstantJson.Text(v));
                break;
            case DateOnly v:
                writer.WriteString("on", v.ToString("O", CultureInfo.InvariantCulture));
                break;
            case int v:
                writer.WriteNumber("whole", v);
                break;
            case double v:
                writer.WriteNumber("number", v);
                break;
            case Enum v:
                writer.WriteString("text", JsonNamingPolicy.KebabCaseLower.ConvertName(v.ToString()));
                break;
            default:
                writer.WriteString("text", Convert.ToString(number, CultureInfo.InvariantCulture));
                break;
        }
    }
}
