using System.Globalization;
using BrewFloor.Brewing;
using BrewFloor.Brewing.Tanks;
using BrewFloor.Domain;
using BrewFloor.Domain.Tanks;
using BrewFloor.Web.Log;

namespace BrewFloor.Web.Tanks;

/// <summary>The part of a form that says what is on which port, and through what.</summary>
internal static class FittingFields
{
    private const int FreeRows = 2;

    /// <summary>A row for each of these, and free ones below; in a correction, for what was logged.</summary>
    public static RowsField Of(FormFloor floor, IReadOnlyList<Fitting> likely) =>
        WithRows(
            floor,
            floor.Corrected switch
            {
                PartsSeen seen => [.. seen.Fitted.Select(Start)],
                Refitted refitted => [.. refitted.Fitted.Select(Start)],
                _ => [.. likely.Select(Start)],
            }
        );

    /// <summary>A row for every port, with what is known to be on it.</summary>
    public static RowsField OfPorts(FormFloor floor) =>
        floor.Corrected is null
            ? WithRows(
                floor,
                [
                    .. (floor.Tank?.Ports ?? []).Select(port =>
                        floor.TankState?.Fitted.FirstOrDefault(f => f.Port == port.Number) is { } on
                            ? Start(on)
                            : [Text(port.Number), null, null, null, null]
                    ),
                ]
            )
            : Of(floor, []);

    private static RowsField WithRows(FormFloor floor, IReadOnlyList<IReadOnlyList<string?>> starts) =>
        new(
            "fitted",
            [
                new ChoiceField("port", Ports(floor)),
                new ChoiceField("part", floor.Choices<Part>()),
                new ChoiceField("clamp", Clamps) { Hint = "hint.clamp" },
                new ChoiceField("through-port", Clamps),
                new ChoiceField("through-part", Clamps),
            ],
            starts.Count + FreeRows
        )
        {
            Starts = starts,
            Hint = "hint.fitted",
        };

    /// <summary>The sizes as they are ordered, with the flange that tells them apart.</summary>
    public static IReadOnlyList<(string Value, string Text)> Clamps { get; } =
    [
        .. Enum.GetValues<Clamp>()
            .Select(clamp =>
                (
                    clamp.ToString(),
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"{Ferrule.Of(clamp).Name} · {Ferrule.Of(clamp).Flange.Millimeters:0.#} mm"
                    )
                )
            ),
    ];

    public static IReadOnlyList<(string Value, string Text)> Ports(FormFloor floor) =>
        [.. (floor.Tank?.Ports ?? []).Select(port => (Text(port.Number), Named(floor, port)))];

    /// <summary>Only on a tank with ports in the inventory.</summary>
    public static bool AreAsked(FormFloor floor) => floor.Tank?.Ports is [_, ..];

    public static Listed<Fitting> Read(FormReader said) =>
        [.. Enumerable.Range(0, Port.Most + FreeRows).Select(row => Read(said, $"fitted.{row}")).OfType<Fitting>()];

    /// <summary>The posted fields of a row, for the form that corrects.</summary>
    public static void Write(Dictionary<string, string> fields, string row, Fitting fitting)
    {
        foreach (var (name, value) in RowNames.Zip(Start(fitting)))
        {
            if (value is not null)
            {
                fields[row + name] = value;
            }
        }
    }

    private static readonly string[] RowNames = ["port", "part", "clamp", "through-port", "through-part"];

    private static string?[] Start(Fitting fitting) =>
        [
            Text(fitting.Port),
            fitting.Part.ToString(),
            fitting.Clamp?.ToString(),
            fitting.Through?.Port.ToString(),
            fitting.Through?.Part.ToString(),
        ];

    private static Fitting? Read(FormReader said, string row)
    {
        if (said.ChoiceOrNone<Part>($"{row}.part") is not { } part)
        {
            return null;
        }

        var (near, far) = (
            said.ChoiceOrNone<Clamp>($"{row}.through-port"),
            said.ChoiceOrNone<Clamp>($"{row}.through-part")
        );
        if (near is null != far is null)
        {
            said.Refuse($"{row}.through-{(near is null ? "port" : "part")}", new Refusal("missing", "through", "", ""));
        }

        return new Fitting(said.Whole($"{row}.port"), part)
        {
            Clamp = said.ChoiceOrNone<Clamp>($"{row}.clamp"),
            Through = near is { } port && far is { } end ? new Adapter(port, end) : null,
        };
    }

    private static string Named(FormFloor floor, Port port)
    {
        var on = floor.TankState?.Fitted.FirstOrDefault(fitting => fitting.Port == port.Number);
        var name = port.Size.Length > 0 ? $"{port.Number} {port.Name}, {port.Size}" : $"{port.Number} {port.Name}";
        return on is null ? name : $"{name}: {floor.Words.Entry("choice.Part." + on.Part)}";
    }

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
