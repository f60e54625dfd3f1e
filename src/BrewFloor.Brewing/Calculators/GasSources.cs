using BrewFloor.Brewing.Carbonation;
using UnitsNet;

namespace BrewFloor.Brewing.Calculators;

/// <summary>What all questions about dissolved gas stand on.</summary>
internal static class GasSources
{
    public static IReadOnlyList<string> All { get; } =
    [
        "Carroll, Slupsky, Mather 1991, J. Phys. Chem. Ref. Data 20:1201 (CO2 in water)",
        "Kell 1975 (water)",
        "the 0.94 of beer: our fit to 136 cells of a printed chart, Brewing Techniques 2(1), Table I, 0 to 8 °C",
        "US Standard Atmosphere (the air's own pressure)",
    ];

    /// <summary>The ten cells of the printed chart that the tests hold.</summary>
    public static IReadOnlyList<string> Chart { get; } = [.. Enumerable.Range(1, 10).Select(cell => $"CO-{cell:00}")];

    /// <summary>A gauge within the same share of the absolute pressure.</summary>
    public static Result Gauge(string name, Pressure gauge, Length altitude)
    {
        var absolute = gauge + Atmosphere.At(altitude).Value;
        var error = absolute * Equilibrium.PlusMinus.DecimalFractions;
        return new Result(name, Figure.Of(gauge), Figure.Of(gauge - error), Figure.Of(gauge + error));
    }

    /// <summary>A content within its standard error.</summary>
    public static Result Within(string name, CarbonDioxideContent content)
    {
        var (likely, error) = (content.Volumes, Equilibrium.PlusMinus.DecimalFractions);
        return new Result(
            name,
            Figure.Of(content),
            new Figure(likely * (1 - error), Measure.Carbonation),
            new Figure(likely * (1 + error), Measure.Carbonation)
        );
    }
}
