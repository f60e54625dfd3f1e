using UnitsNet;

namespace BrewFloor.Brewing.Tanks;

/// <summary>Whether European pressure equipment law looks at a vessel.</summary>
/// <remarks>
/// Directive 2014/68/EU, Article 1(1): above 0.5 bar gauge (check CI-10). Categories by pressure times volume are left out:
/// they were only remembered. No proof of strength, and no advice.
/// </remarks>
public static class PressureDirective
{
    /// <summary>From here on, kPa gauge.</summary>
    public static Pressure From => Pressure.FromKilopascals(50);

    /// <summary>Whether a vessel is in its scope.</summary>
    /// <param name="allowable">Maximum allowable pressure, 0 to 100,000 kPa gauge.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<bool> Covers(Pressure allowable) =>
        Accepted.Between(0, 100_000, allowable.Kilopascals, "pressure-gauge", "kPa") is { } refusal
            ? refusal
            : allowable.Kilopascals > From.Kilopascals;
}
