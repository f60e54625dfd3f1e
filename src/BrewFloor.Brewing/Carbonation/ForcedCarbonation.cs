using UnitsNet;

namespace BrewFloor.Brewing.Carbonation;

/// <summary>A tank of beer that is to take up CO2 from a cylinder.</summary>
/// <param name="Beer">In litres.</param>
/// <param name="Headspace">In litres, at no pressure before, all CO2.</param>
/// <param name="Temperature">0 to 40 °C.</param>
/// <param name="Altitude">-500 to 5,000 m.</param>
public readonly record struct FlatTank(Volume Beer, Volume Headspace, Temperature Temperature, Length Altitude);

/// <summary>What the regulator is set to, and what the cylinder gives.</summary>
/// <param name="Gauge">In kPa gauge; the beer is there when it rests.</param>
/// <param name="IntoBeer">CO2, kg.</param>
/// <param name="IntoHeadspace">CO2, kg.</param>
public readonly record struct CarbonationPlan(Pressure Gauge, Mass IntoBeer, Mass IntoHeadspace);

/// <summary>Carbonation from a cylinder.</summary>
/// <remarks>
/// Mass balance, <see cref="Equilibrium"/> and the ideal gas. What is blown off on the way comes on top.
/// </remarks>
public static class ForcedCarbonation
{
    /// <summary>The setting and the gas.</summary>
    /// <param name="tank">As it stands.</param>
    /// <param name="now">What the beer holds.</param>
    /// <param name="target">What it is to hold: at least as much, and at least what open beer holds.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<CarbonationPlan> Plan(FlatTank tank, CarbonDioxideContent now, CarbonDioxideContent target)
    {
        var open = ResidualGas.After(tank.Temperature, tank.Altitude);
        var gauge = Equilibrium.GaugeFor(target, tank.Temperature, tank.Altitude);
        var refusal =
            Accepted.Litres(tank.Beer, "beer")
            ?? Accepted.Litres(tank.Headspace, "headspace")
            ?? open.Refusal
            ?? gauge.Refusal
            ?? Accepted.Between(Math.Max(open.Value.Volumes, now.Volumes), 15, target.Volumes, "carbonation", "vol");
        if (refusal is not null)
        {
            return refusal;
        }

        var above = IdealGas.Grams(
            tank.Headspace.Liters,
            gauge.Value.Bars,
            tank.Temperature.Kelvins,
            IdealGas.CarbonDioxide
        );
        var into = (target.GramsPerLitre - now.GramsPerLitre) * tank.Beer.Liters;
        return new CarbonationPlan(gauge.Value, Mass.FromKilograms(into / 1000), Mass.FromKilograms(above / 1000));
    }
}
