namespace BrewFloor.Brewing;

/// <summary>m = p V M / (R T): what a gas weighs, with masses in grams, volumes in litres, pressures in bar absolute.</summary>
internal static class IdealGas
{
    public const double Constant = 8.314462618; // J/(mol K)

    public const double CarbonDioxide = 44.0095; // g/mol

    public const double Oxygen = 31.998;

    /// <summary>Of oxygen in dry air, by volume.</summary>
    public const double OxygenInAir = 0.2095;

    public static double Grams(double litres, double bars, double kelvins, double molarMass) =>
        litres * bars * 100 * molarMass / (Constant * kelvins); // 1 bar in 1 L is 100 J
}
