using UnitsNet;

namespace BrewFloor.Brewing.Cleaning;

/// <summary>A citric acid bath of ASTM A967.</summary>
/// <param name="Name">As the standard names it.</param>
/// <param name="Coldest">In °C.</param>
/// <param name="Warmest">In °C.</param>
/// <param name="Shortest">It lasts at least.</param>
public sealed record CitricTreatment(string Name, Temperature Coldest, Temperature Warmest, TimeSpan Shortest);

/// <summary>A bath that takes free iron off stainless steel, so that its film can form in air.</summary>
/// <remarks>
/// It removes no weld scale, and the steel must be clean first (ASTM A380). 4 to 10 % by weight is published (ASTM A967 as
/// summarised by processors; check PA-01); temperatures and times of the treatments are from memory. Plastic and brass
/// stay out. A soak with an acid sanitizer is trade practice and isn't this.
/// </remarks>
public static class Passivation
{
    /// <summary>The weakest bath, by weight.</summary>
    public static MassFraction Weakest => MassFraction.FromPercent(4);

    /// <summary>The strongest, by weight.</summary>
    public static MassFraction Strongest => MassFraction.FromPercent(10);

    /// <summary>Hot to cool; temperatures and times from memory.</summary>
    public static IReadOnlyList<CitricTreatment> Citric { get; } =
    [Treatment("Citric 1", 60, 71, 4), Treatment("Citric 2", 49, 60, 10), Treatment("Citric 3", 21, 49, 20)];

    /// <summary>Trade practice for an acid soak: one US fluid ounce of product on a gallon, 7.8125 mL/L (check CI-09).</summary>
    public static VolumeConcentration AcidSoak => Dose.Of(Volume.FromUsOunces(1), Volume.FromUsGallons(1)).Value;

    /// <summary>Citric acid for a bath, kg, into its water.</summary>
    /// <param name="water">0 to 100,000 L, taken as 0.998204 kg/L.</param>
    /// <param name="strength">4 to 10 % by weight.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<Mass> AcidFor(Volume water, MassFraction strength) =>
        (
            Accepted.Between(0, 100_000, water.Liters, "water", "L")
            ?? Accepted.Between(Weakest.Percent, Strongest.Percent, strength.Percent, "strength", "%")
        )
            is { } refusal
            ? refusal
            : Dose.IntoWater(Mass.FromKilograms(water.Liters * 0.998204), strength);

    /// <summary>How long a citric bath lasts at a temperature: the shortest treatment that takes it.</summary>
    /// <param name="bath">21 to 71 °C.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<CitricTreatment> At(Temperature bath) =>
        Accepted.Between(21, 71, bath.DegreesCelsius, "bath-temperature", "°C") is { } refusal
            ? refusal
            : Citric.First(t => bath.DegreesCelsius >= t.Coldest.DegreesCelsius);

    private static CitricTreatment Treatment(string name, double from, double to, double minutes) =>
        new(
            name,
            Temperature.FromDegreesCelsius(from),
            Temperature.FromDegreesCelsius(to),
            TimeSpan.FromMinutes(minutes)
        );
}

/// <summary>Reagents that show free iron; for a bench, never for a surface that touches beer unless fully removed.</summary>
public static class IronTest
{
    /// <summary>Ferroxyl: water, nitric acid, potassium ferricyanide in % by weight (ASTM A380 7.3.4; check PA-02).</summary>
    public static IReadOnlyList<MassFraction> Ferroxyl { get; } =
    [MassFraction.FromPercent(94), MassFraction.FromPercent(3), MassFraction.FromPercent(3)];

    /// <summary>Blue within this is free iron: 15 s (the same).</summary>
    public static TimeSpan FerroxylWithin => TimeSpan.FromSeconds(15);

    /// <summary>Copper sulfate in half a litre of water, with 2 to 3 mL of sulphuric acid: 8 g (MIL-STD-753C; check PA-03).</summary>
    public static Mass CopperSulfate => Mass.FromGrams(8);

    /// <summary>Kept wet so long; plated copper is free iron: 6 min (the same).</summary>
    public static TimeSpan CopperSulfateWet => TimeSpan.FromMinutes(6);
}
