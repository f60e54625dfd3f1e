using UnitsNet;

namespace BrewFloor.Brewing.Cleaning;

/// <summary>Stainless steels of the cellar.</summary>
public enum SteelGrade
{
    /// <summary>304, 1.4301 and their low-carbon kin.</summary>
    Grade304,

    /// <summary>316, 1.4401 and their low-carbon kin.</summary>
    Grade316,
}

/// <summary>Chloride and chlorine pit stainless steel. Prefer none.</summary>
/// <remarks>
/// Sources: Nickel Institute 11003 (natural waters at room temperature; check PA-04); BSSA on sodium hypochlorite (316,
/// rinsed; check PA-05). Heat, acid and crevices make it worse.
/// </remarks>
public static class ChlorideLimits
{
    /// <summary>Residual chlorine that 316 bears for a day before it is rinsed, 15 mg/L to <see cref="ChlorineMost"/>.</summary>
    public static MassConcentration ChlorineLeast => MassConcentration.FromMilligramsPerLiter(15);

    /// <summary>At most, mg/L.</summary>
    public static MassConcentration ChlorineMost => MassConcentration.FromMilligramsPerLiter(20);

    /// <summary>For at most this long.</summary>
    public static TimeSpan ChlorineLongest => TimeSpan.FromHours(24);

    /// <summary>Below this, crevice attack by chloride is rare, mg/L: the careful end of what is published.</summary>
    /// <param name="grade">The steel.</param>
    public static MassConcentration ChlorideCareful(SteelGrade grade) =>
        MassConcentration.FromMilligramsPerLiter(grade is SteelGrade.Grade304 ? 100 : 1000);

    /// <summary>The same, the other end of what is published, mg/L.</summary>
    /// <param name="grade">The steel.</param>
    public static MassConcentration ChlorideMost(SteelGrade grade) =>
        MassConcentration.FromMilligramsPerLiter(grade is SteelGrade.Grade304 ? 200 : 1000);

    /// <summary>Whether a water stays below the careful end.</summary>
    /// <param name="water">Its chloride, 0 to 50,000 mg/L.</param>
    /// <param name="grade">The steel.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<bool> Bears(MassConcentration water, SteelGrade grade) =>
        Accepted.Between(0, 50_000, water.MilligramsPerLiter, "chloride", "mg/L") is { } refusal
            ? refusal
            : water.MilligramsPerLiter < ChlorideCareful(grade).MilligramsPerLiter;
}
