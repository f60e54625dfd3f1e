using System.Collections.Frozen;
using BrewFloor.Web.Log;

namespace BrewFloor.Web.Spreadsheets;

/// <summary>How people write units, in a header or behind a figure, and the symbol that each stands for here.</summary>
internal static class SheetUnits
{
    // Common practice of the trade, no source. Without spaces, points and capitals.
    private static readonly FrozenDictionary<string, string> Symbols = new Dictionary<string, string>(
        StringComparer.Ordinal
    )
    {
        ["l"] = "L",
        ["lt"] = "L",
        ["ltr"] = "L",
        ["liter"] = "L",
        ["liters"] = "L",
        ["litre"] = "L",
        ["litres"] = "L",
        ["hl"] = "hL",
        ["hectoliter"] = "hL",
        ["hectoliters"] = "hL",
        ["hectolitre"] = "hL",
        ["hectolitres"] = "hL",
        ["ml"] = "mL",
        ["milliliters"] = "mL",
        ["millilitres"] = "mL",
        ["gal"] = "gal",
        ["gals"] = "gal",
        ["gallon"] = "gal",
        ["gallons"] = "gal",
        ["usgal"] = "gal",
        ["usgallons"] = "gal",
        ["bbl"] = "bbl",
        ["bbls"] = "bbl",
        ["usbbl"] = "bbl",
        ["barrel"] = "bbl",
        ["barrels"] = "bbl",
        ["mm"] = "mm",
        ["cm"] = "cm",
        ["in"] = "in",
        ["inch"] = "in",
        ["inches"] = "in",
        ["\""] = "in",
        ["c"] = "°C",
        ["°c"] = "°C",
        ["degc"] = "°C",
        ["celsius"] = "°C",
        ["f"] = "°F",
        ["°f"] = "°F",
        ["degf"] = "°F",
        ["fahrenheit"] = "°F",
        ["bar"] = "bar",
        ["barg"] = "bar",
        ["kpa"] = "kPa",
        ["psi"] = "psi",
        ["psig"] = "psi",
        ["sg"] = "SG",
        ["p"] = "°P",
        ["°p"] = "°P",
        ["degp"] = "°P",
        ["plato"] = "°P",
        ["°plato"] = "°P",
        ["g"] = "g",
        ["gram"] = "g",
        ["grams"] = "g",
        ["kg"] = "kg",
        ["oz"] = "oz",
        ["lb"] = "lb",
        ["lbs"] = "lb",
    }.ToFrozenDictionary(StringComparer.Ordinal);

    /// <summary>The symbol of a unit as written; null: not one that is known here, or not of this measure.</summary>
    public static string? Of(string written, Measure measure) =>
        Symbols.TryGetValue(Plain(written), out var symbol)
        && UnitPart.SymbolsOf(measure).Contains(symbol, StringComparer.Ordinal)
            ? symbol
            : null;

    /// <summary>A unit of any measure.</summary>
    public static bool IsKnown(string written) => Symbols.ContainsKey(Plain(written));

    private static string Plain(string written) =>
        string.Concat(written.Where(c => !char.IsWhiteSpace(c) && c is not '.')).ToLowerInvariant();
}
