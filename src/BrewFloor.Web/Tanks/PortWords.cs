using System.Globalization;
using BrewFloor.Brewing.Tanks;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Web.Shell;
using UnitsNet;

namespace BrewFloor.Web.Tanks;

/// <summary>Ports, parts and how they fit, in words. Flanges and bores are in mm for everybody: a caliper shows them so.</summary>
public static class PortWords
{
    /// <summary>"Side, 1 1/2 in".</summary>
    public static string Where(Port port, Wording words)
    {
        var place = words.Entry("choice.PortPlace." + port.Place);
        return port.Size.Length > 0 ? $"{place}, {port.Size}" : place;
    }

    /// <summary>Everything that is written down of it, in a line.</summary>
    public static string All(Port port, Wording words)
    {
        (string Key, string? Value)[] more =
        [
            ("port-height", Mm(port.Height)),
            ("port-from-middle", Mm(port.FromMiddle)),
            ("port-around", port.Around is { } around ? $"{around.Degrees:0.#}°" : null),
            ("port-flange", Mm(port.Flange)),
            ("port-bore", Mm(port.Bore)),
        ];
        return string.Join(
            "; ",
            more.Where(one => one.Value is not null)
                .Select(one => $"{words.Entry("field." + one.Key)} {one.Value}")
                .Prepend($"{port.Name}, {Where(port, words)}")
        );
    }

    /// <summary>"Thermowell, 1 1/2 in".</summary>
    public static string Of(Fitting fitting, Wording words)
    {
        var part = words.Entry("choice.Part." + fitting.Part);
        return fitting.Clamp is { } clamp ? $"{part}, {Ferrule.Of(clamp).Name}" : part;
    }

    /// <summary>"through a reducer 3 in to 1 1/2 in", or null.</summary>
    public static string? Through(Fitting fitting, Wording words) =>
        fitting.Through is { } through
            ? words[
                "fit-through",
                new("one", Ferrule.Of(through.Port).Name),
                new("other", Ferrule.Of(through.Part).Name)
            ]
            : null;

    /// <summary>"Flush", "Step 38 / 34.8 mm", "Does not fit: 91 / 50.5 mm", "Not known".</summary>
    public static string FitOf(Port port, Fitting fitting, Wording words) =>
        Fittings.FitOf(port, fitting) switch
        {
            null => words["fit-unknown"],
            { Apart: { } apart } => words[
                "fit-apart",
                Figure("one", apart.One.Flange),
                Figure("other", apart.Other.Flange)
            ],
            { Step: { } step } => words["fit-step", Figure("one", step.One.Bore), Figure("other", step.Other.Bore)],
            _ => words["fit-flush"],
        };

    private static Number Figure(string name, Length length) => new(name, Math.Round(length.Millimeters, 1));

    private static string? Mm(Length? length) =>
        length is { } known ? known.Millimeters.ToString("0.#", CultureInfo.InvariantCulture) + "\u00a0mm" : null;
}
