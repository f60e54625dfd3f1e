using UnitsNet;

namespace BrewFloor.Brewing.Heat;

/// <summary>Inhibited, food grade propylene glycol in water.</summary>
/// <param name="Freezing">Where its first ice forms, °C.</param>
/// <param name="SpecificHeat">At 0 °C, kJ/(kg K).</param>
/// <param name="Density">At 0 °C, kg/m³.</param>
/// <remarks>
/// An equipment maker's table of 20, 30, 35 and 40 % by weight, straight lines between; its freezing points agree with
/// Lange's Handbook, 15th ed., Table 5.13. Check by a refractometer with a glycol scale, not °Brix. Never ethylene glycol.
/// Checks HE-07 to HE-11.
/// </remarks>
public readonly record struct Glycol(Temperature Freezing, SpecificEntropy SpecificHeat, Density Density)
{
    private static readonly (double Percent, double Freezing, double Heat, double Density)[] Table =
    [
        (20, -7.1, 3.93, 1025.8),
        (30, -12.7, 3.79, 1036.2),
        (35, -16.4, 3.72, 1040.7),
        (40, -21.1, 3.64, 1045.1),
    ];

    /// <summary>The coolant stays this much above freezing at least: 5 K (common practice, no source).</summary>
    public static TemperatureDelta Margin => TemperatureDelta.FromKelvins(5);

    /// <summary>At the evaporator: 8 K (common practice, no source).</summary>
    public static TemperatureDelta EvaporatorMargin => TemperatureDelta.FromKelvins(8);

    /// <summary>Of a strength.</summary>
    /// <param name="strength">20 to 40 % by weight.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<Glycol> Of(MassFraction strength)
    {
        var percent = strength.Percent;
        if (Accepted.Between(20, 40, percent, "glycol", "%") is { } refusal)
        {
            return refusal;
        }

        var i = Math.Max(1, Array.FindIndex(Table, row => row.Percent >= percent));
        var (a, b) = (Table[i - 1], Table[i]);
        var share = (percent - a.Percent) / (b.Percent - a.Percent);
        return new Glycol(
            Temperature.FromDegreesCelsius(a.Freezing + (share * (b.Freezing - a.Freezing))),
            SpecificEntropy.FromKilojoulesPerKilogramKelvin(a.Heat + (share * (b.Heat - a.Heat))),
            Density.FromKilogramsPerCubicMeter(a.Density + (share * (b.Density - a.Density)))
        );
    }

    /// <summary>The weakest mixture for a coldest coolant, 20 % at least.</summary>
    /// <param name="coldest">Anywhere, the evaporator's wall included: -21.1 °C plus the margin, to 20 °C.</param>
    /// <param name="margin">Above freezing, 0 to 15 K.</param>
    /// <returns>In % by weight; refused outside.</returns>
    public static Outcome<MassFraction> For(Temperature coldest, TemperatureDelta margin)
    {
        if (Accepted.Between(0, 15, margin.Kelvins, "margin", "K") is { } refusal)
        {
            return refusal;
        }

        var needed = coldest.DegreesCelsius - margin.Kelvins;
        if (Accepted.Between(-21.1 + margin.Kelvins, 20, coldest.DegreesCelsius, "coldest", "°C") is { } outside)
        {
            return outside;
        }

        return needed >= -7.1
            ? MassFraction.FromPercent(20)
            : MassFraction.FromPercent(
                Rising.Where(p => -Of(MassFraction.FromPercent(p)).Value.Freezing.DegreesCelsius, -needed, 20, 40)
            );
    }

    /// <summary>Heat that a bath takes up while it warms, kJ.</summary>
    /// <param name="bath">0 to 1,000,000 L.</param>
    /// <param name="swing">0 to 40 K.</param>
    /// <returns>Refused outside.</returns>
    public Outcome<Energy> Takes(Volume bath, TemperatureDelta swing) =>
        (
            Accepted.Between(0, 1_000_000, bath.Liters, "bath", "L")
            ?? Accepted.Between(0, 40, swing.Kelvins, "swing", "K")
        )
            is { } refusal
            ? refusal
            : Energy.FromKilojoules(
                bath.CubicMeters
                    * Density.KilogramsPerCubicMeter
                    * SpecificHeat.KilojoulesPerKilogramKelvin
                    * swing.Kelvins
            );
}
