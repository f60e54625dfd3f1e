using BrewFloor.Brewing.Extract;
using UnitsNet;

namespace BrewFloor.Brewing.Carbonation;

/// <summary>A beer that is to make its own gas under a closed valve.</summary>
/// <param name="Target">What it is to hold.</param>
/// <param name="Warm">Temperature while it ferments on, the highest so far, 0 to 40 °C.</param>
/// <param name="Final">Where the apparent extract will end, °P: from a forced ferment or the yeast's history.</param>
/// <param name="Headspace">Over the beer, of the beer's volume, 0 to 200 %.</param>
/// <param name="Altitude">-500 to 5,000 m.</param>
/// <param name="Quotient">0.81 unless chosen.</param>
public readonly record struct SpundingWish(
    CarbonDioxideContent Target,
    Temperature Warm,
    DegreesPlato Final,
    Ratio Headspace,
    Length Altitude,
    AttenuationQuotient Quotient = default
);

/// <summary>When to close, and what the valve is set to.</summary>
/// <param name="CloseAt">Apparent extract, °P. An error of 0.3 °P in the end is 0.6 volumes: close rather early.</param>
/// <param name="Remaining">Apparent extract that ferments under the valve, °P.</param>
/// <param name="RemainingReal">Real extract that does, °P.</param>
/// <param name="Needed">CO2 to come, g per litre of beer, the headspace's share included.</param>
/// <param name="Gauge">What the valve is set to and the tank reaches warm, kPa gauge: the valve controls, not the gravity.</param>
public readonly record struct SpundingPlan(
    DegreesPlato CloseAt,
    DegreesPlato Remaining,
    DegreesPlato RemainingReal,
    MassConcentration Needed,
    Pressure Gauge
);

/// <summary>Carbonation by what is still to ferment.</summary>
/// <remarks>
/// dc = target - residual + headspace (p_end - p_vent) M / (R T); dRE = dc / (4.629 rho), dAE = dRE / q. Balling's gas
/// yield, <see cref="Equilibrium"/>, beer near its end taken as 1.010 kg/L. Checks CO-16 to CO-19.
/// </remarks>
public static class Spunding
{
    /// <summary>Above this share of a tank's rating, think again (common practice, no source).</summary>
    public static Ratio NearRating => Ratio.FromPercent(90);

    private const double KilogramsPerLitre = 1.010;

    private const double GramsPerRealDegree = 4.629 * KilogramsPerLitre; // of CO2, in a litre

    /// <summary>The moment to close and the pressure, for a tank that may bear it.</summary>
    /// <param name="wish">What is wanted.</param>
    /// <param name="rating">The lower of the tank's rating and its relief valve's setting, kPa gauge, 1 to 1,000.</param>
    /// <returns>
    /// Refused outside, and for a target that the tank can't hold warm, or that the beer holds already: the range says
    /// what it can reach.
    /// </returns>
    public static Outcome<SpundingPlan> Plan(SpundingWish wish, Pressure rating)
    {
        var (residual, most) = (ResidualGas.After(wish.Warm, wish.Altitude), MostAt(rating, wish.Warm, wish.Altitude));
        var refusal =
            residual.Refusal
            ?? most.Refusal
            ?? Accepted.Between(0, 200, wish.Headspace.Percent, "headspace", "%")
            ?? Accepted.Between(-1.31, 40, wish.Final.Value, "final-extract", "°P")
            ?? Accepted.Between(residual.Value.Volumes, most.Value.Volumes, wish.Target.Volumes, "carbonation", "vol");
        if (refusal is not null)
        {
            return refusal;
        }

        var gauge = Equilibrium.GaugeFor(wish.Target, wish.Warm, wish.Altitude).Value;
        var above = IdealGas.Grams(
            wish.Headspace.DecimalFractions,
            gauge.Bars,
            wish.Warm.Kelvins,
            IdealGas.CarbonDioxide
        );
        var needed = wish.Target.GramsPerLitre - residual.Value.GramsPerLitre + above;
        var real = needed / GramsPerRealDegree;
        var apparent = real / wish.Quotient.Value;
        return new SpundingPlan(
            new DegreesPlato(wish.Final.Value + apparent),
            new DegreesPlato(apparent),
            new DegreesPlato(real),
            MassConcentration.FromGramsPerLiter(needed),
            gauge
        );
    }

    /// <summary>The most that a tank can hold warm.</summary>
    /// <param name="rating">Its rating or relief setting, kPa gauge, 1 to 1,000.</param>
    /// <param name="warm">0 to 40 °C.</param>
    /// <param name="altitude">-500 to 5,000 m.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<CarbonDioxideContent> MostAt(Pressure rating, Temperature warm, Length altitude) =>
        Accepted.Between(1, 1000, rating.Kilopascals, "rating", "kPa") is { } refusal ? refusal
        : Atmosphere.At(altitude) is { Refusal: { } nowhere } ? nowhere
        : Equilibrium.ContentAt(
            warm,
            UnitMath.Min(rating, Equilibrium.Highest - Atmosphere.At(altitude).Value),
            altitude
        );

    /// <summary>Where the gauge goes when the closed tank is cooled afterwards, kPa gauge.</summary>
    /// <param name="wish">What was wanted, and is reached.</param>
    /// <param name="cold">0 °C to the warm temperature.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<Pressure> GaugeAfterCooling(SpundingWish wish, Temperature cold)
    {
        var gauge = Equilibrium.GaugeFor(wish.Target, wish.Warm, wish.Altitude);
        if ((gauge.Refusal ?? Accepted.Between(0, 200, wish.Headspace.Percent, "headspace", "%")) is { } refusal)
        {
            return refusal;
        }

        var air = Atmosphere.At(wish.Altitude).Value;
        var tank = new SealedTank(
            Volume.FromLiters(1),
            Volume.FromLiters(wish.Headspace.DecimalFractions),
            wish.Warm,
            gauge.Value + air
        );
        var end = SealedCrash.EndOf(tank, cold);
        return end.Gives(out var settled)
            ? Pressure.FromKilopascals(settled.Settled.Kilopascals - air.Kilopascals)
            : end.Refusal!;
    }

    /// <summary>The gas that a fall in apparent extract makes, all of it kept.</summary>
    /// <param name="fall">0 to 40 °P: one gives 3.79 g/L, 1.93 volumes.</param>
    /// <param name="quotient">0.81 unless chosen.</param>
    /// <returns>In g/L; refused outside.</returns>
    public static Outcome<MassConcentration> GasFrom(DegreesPlato fall, AttenuationQuotient quotient = default) =>
        Accepted.Between(0, 40, fall.Value, "apparent-extract", "°P") is { } refusal
            ? refusal
            : MassConcentration.FromGramsPerLiter(fall.Value * quotient.Value * GramsPerRealDegree);
}
