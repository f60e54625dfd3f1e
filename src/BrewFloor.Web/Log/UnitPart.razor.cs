using BrewFloor.Web.Shell;
using BrewFloor.Web.Units;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.Primitives;

namespace BrewFloor.Web.Log;

/// <summary>The unit beside a figure: the reader's own is chosen, the others are one press away.</summary>
public sealed partial class UnitPart(Wording wording)
{
    [Parameter, EditorRequired]
    public required QuantityField Field { get; set; }

    [Parameter]
    public IReadOnlyDictionary<string, StringValues>? Posted { get; set; }

    private IReadOnlyList<string> Symbols => SymbolsOf(Field.Measure);

    private string? Chosen =>
        Posted is not null && Posted.TryGetValue(Field.Name + ".unit", out var posted)
            ? posted.ToString()
            : Field.StartUnit ?? OwnOf(Field.Measure, wording.Figures.Units);

    // Symbols are the same everywhere; a word isn't.
    private string Shown(string symbol) => symbol is UnitSymbols.Pieces ? wording["unit-pieces"] : symbol;

    /// <summary>The symbol a reader's own unit has; null for a number without one.</summary>
    public static string? OwnOf(Measure measure, ReadingUnits units) =>
        measure switch
        {
            Measure.Volume or Measure.WaterIn => UnitSymbols.Of(units.Volume),
            Measure.SmallVolume => "mL",
            Measure.Temperature => UnitSymbols.Of(units.Temperature),
            Measure.Pressure => UnitSymbols.Of(units.Pressure),
            Measure.Level => UnitSymbols.Of(units.Length),
            Measure.Mass => "g",
            Measure.Minutes => "min",
            Measure.Gravity => UnitSymbols.Of(units.Gravity),
            Measure.CarbonDioxide => UnitSymbols.Of(CarbonDioxideUnit.Volumes),
            Measure.Pieces or Measure.Stock => UnitSymbols.Pieces,
            _ => null,
        };

    internal static IReadOnlyList<string> SymbolsOf(Measure measure) =>
        measure switch
        {
            Measure.Volume => ["L", "hL", "gal", "bbl", "mL"],
            Measure.SmallVolume => ["mL", "L"],
            Measure.WaterIn => ["L", "hL", "gal", "bbl", "kg", "lb"],
            Measure.Temperature => ["°C", "°F"],
            Measure.Pressure => ["bar", "kPa", "psi"],
            Measure.Level => ["mm", "cm", "in"],
            Measure.Mass => ["g", "kg", "oz", "lb"],
            Measure.Minutes => ["min", "h"],
            Measure.Gravity => ["SG", "°P"],
            Measure.CarbonDioxide => ["vol", "g/L"],
            Measure.Pieces => [UnitSymbols.Pieces],
            Measure.Stock => [UnitSymbols.Pieces, "mL", "L", "g", "kg", "oz", "lb"],
            _ => [],
        };
}
