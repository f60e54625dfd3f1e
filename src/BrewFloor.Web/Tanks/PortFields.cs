using System.Globalization;
using BrewFloor.Brewing;
using BrewFloor.Brewing.Tanks;
using BrewFloor.Domain;
using BrewFloor.Domain.Tanks;
using BrewFloor.Web.Log;
using BrewFloor.Web.Shell;
using UnitsNet;

namespace BrewFloor.Web.Tanks;

/// <summary>The form of a tank's ports: the fields of each, and the ports they make.</summary>
/// <remarks>A port's fields are named by its number, so that two people who edit meet field by field.</remarks>
public static class PortFields
{
    /// <summary>The fields of one port; of a number that is free, empty ones.</summary>
    public static IReadOnlyList<Field> Of(int number, Port? port, Wording words) =>
        [.. Described(number, port, words), .. Placed(number, port, words), .. Measured(number, port, words)];

    private static IEnumerable<Field> Described(int number, Port? port, Wording words) =>
        [
            new TextField(Name(number, "name")) { Label = "field.port-name", Start = port?.Name },
            new ChoiceField(Name(number, "place"), words.Choices<PortPlace>())
            {
                Label = "field.port-place",
                Start = port?.Place.ToString(),
            },
            new ChoiceField(Name(number, "clamp"), FittingFields.Clamps)
            {
                Label = "field.port-clamp",
                Hint = "hint.clamp",
                Start = port?.Clamp?.ToString(),
            },
        ];

    private static IEnumerable<Field> Placed(int number, Port? port, Wording words) =>
        [
            new QuantityField(Name(number, "height"), Measure.Level)
            {
                Label = "field.port-height",
                Hint = "hint.port-height",
                Start = In(words, port?.Height),
            },
            new QuantityField(Name(number, "from-middle"), Measure.Level)
            {
                Label = "field.port-from-middle",
                Hint = "hint.port-from-middle",
                Start = In(words, port?.FromMiddle),
            },
            new TextField(Name(number, "around"))
            {
                IsNumber = true,
                Label = "field.port-around",
                Hint = "hint.port-around",
                Start = Text(port?.Around?.Degrees),
            },
        ];

    // Tucked away: few measure, and few ports go.
    private static IEnumerable<Field> Measured(int number, Port? port, Wording words) =>
        [
            new QuantityField(Name(number, "flange"), Measure.Level)
            {
                IsExtra = true,
                Label = "field.port-flange",
                Hint = "hint.port-flange",
                Start = In(words, port?.Flange),
            },
            new QuantityField(Name(number, "bore"), Measure.Level)
            {
                IsExtra = true,
                Label = "field.port-bore",
                Start = In(words, port?.Bore),
            },
            new FlagField(Name(number, "gone"))
            {
                IsExtra = true,
                Label = "field.port-gone",
                Hint = "hint.port-gone",
            },
        ];

    public static string Name(int number, string field) =>
        string.Create(CultureInfo.InvariantCulture, $"port.{number}.{field}");

    /// <summary>The ports that were typed, by number; problems stand in <paramref name="said"/>.</summary>
    public static Listed<Port> Read(FormReader said) =>
        [.. Enumerable.Range(1, Port.Most).Select(number => Read(said, number)).OfType<Port>()];

    private static Port? Read(FormReader said, int number)
    {
        string Of(string field) => Name(number, field);
        var isEmpty = said.Text(Of("name")).Length == 0 && said.Text(Of("name") + BothValues.Was).Length == 0;
        if (said.Flag(Of("gone")) || isEmpty)
        {
            return null;
        }

        return new Port(number, said.RequiredText(Of("name")), said.Choice<PortPlace>(Of("place")))
        {
            Clamp = said.ChoiceOrNone<Clamp>(Of("clamp")),
            Height = said.LevelOrNone(Of("height")),
            FromMiddle = said.LevelOrNone(Of("from-middle")),
            Around = ReadAround(said, Of("around")),
            Flange = said.LevelOrNone(Of("flange")),
            Bore = said.LevelOrNone(Of("bore")),
        };
    }

    private static Angle? ReadAround(FormReader said, string name)
    {
        var degrees = said.FigureOrNone(name);
        if (degrees is < 0 or > 360)
        {
            said.Refuse(name, new Refusal("out-of-range", "port-around", "0", "360", "°"));
        }

        return degrees is { } read ? Angle.FromDegrees(read) : null;
    }

    private static string? In(Wording words, Length? length) => Text(length?.As(words.Figures.Units.Length));

    private static string? Text(double? value) => value?.ToString("0.###", CultureInfo.InvariantCulture);
}
