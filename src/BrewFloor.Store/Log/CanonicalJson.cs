using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace BrewFloor.Store.Log;

/// <summary>JSON in the one way RFC 8785 writes it, so that the same fields are the same bytes.</summary>
internal static class CanonicalJson
{
    public static byte[] Utf8(JsonNode? json)
    {
        var text = new StringBuilder();
        Write(text, json);
        return Encoding.UTF8.GetBytes(text.ToString());
    }

    /// <summary>As ECMAScript writes a number (RFC 8785, 3.2.2.3).</summary>
    public static string Number(double value)
    {
        if (!double.IsFinite(value))
        {
            throw new JsonException("JSON has no such number.");
        }

        if (value == 0)
        {
            return "0"; // also for minus nothing
        }

        // 1.5E-07, 0.00012, 123.45: the shortest digits that read back as the same number, and where the point stands.
        var shortest = Math.Abs(value).ToString("R", CultureInfo.InvariantCulture).Split('E');
        var (whole, part) = shortest[0].Split('.') is [var w, var p] ? (w, p) : (shortest[0], "");
        var exponent = shortest.Length > 1 ? int.Parse(shortest[1], CultureInfo.InvariantCulture) : 0;
        var digits = (whole + part).TrimStart('0');
        var point = whole.Length - ((whole + part).Length - digits.Length) + exponent;
        return (value < 0 ? "-" : "") + Placed(digits.TrimEnd('0'), point);
    }

    // The digits with the point after the first "point" of them.
    private static string Placed(string digits, int point) =>
        point switch
        {
            > 0 and <= 21 when digits.Length <= point => digits.PadRight(point, '0'),
            > 0 and <= 21 => $"{digits[..point]}.{digits[point..]}",
            > -6 and <= 0 => $"0.{new string('0', -point)}{digits}",
            _ => string.Create(
                CultureInfo.InvariantCulture,
                $"{digits[0]}{(digits.Length > 1 ? "." : "")}{digits[1..]}e{(point > 0 ? "+" : "-")}{Math.Abs(point - 1)}"
            ),
        };

    private static void Write(StringBuilder text, JsonNode? json)
    {
        switch (json)
        {
            case JsonObject members:
                WriteAll(
                    text,
                    '{',
                    '}',
                    members.OrderBy(m => m.Key, StringComparer.Ordinal),
                    member =>
                    {
                        WriteText(text, member.Key);
                        text.Append(':');
                        Write(text, member.Value);
                    }
                );
                break;
            case JsonArray items:
                WriteAll(text, '[', ']', items, item => Write(text, item));
                break;
            case null:
                text.Append("null");
                break;
            default:
                WriteValue(text, json.AsValue());
                break;
        }
    }

    private static void WriteAll<T>(StringBuilder text, char open, char close, IEnumerable<T> items, Action<T> write)
    {
        text.Append(open);
        var isFirst = true;
        foreach (var item in items)
        {
            if (!isFirst)
            {
                text.Append(',');
            }

            isFirst = false;
            write(item);
        }

        text.Append(close);
    }

    private static void WriteValue(StringBuilder text, JsonValue value)
    {
        switch (value.GetValueKind())
        {
            case JsonValueKind.String:
                WriteText(text, value.GetValue<string>());
                break;
            case JsonValueKind.Number:
                text.Append(Number(double.Parse(value.ToJsonString(), CultureInfo.InvariantCulture)));
                break;
            default:
                text.Append(value.ToJsonString());
                break;
        }
    }

    private static void WriteText(StringBuilder text, string value)
    {
        text.Append('"');
        foreach (var c in value)
        {
            text.Append(
                c switch
                {
                    '"' => "\\\"",
                    '\\' => "\\\\",
                    '\b' => "\\b",
                    '\t' => "\\t",
                    '\n' => "\\n",
                    '\f' => "\\f",
                    '\r' => "\\r",
                    < ' ' => string.Create(CultureInfo.InvariantCulture, $"\\u{(int)c:x4}"),
                    _ => c.ToString(),
                }
            );
        }

        text.Append('"');
    }
}
