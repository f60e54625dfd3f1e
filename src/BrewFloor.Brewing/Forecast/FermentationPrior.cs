using BrewFloor.Brewing.Extract;
using UnitsNet;

namespace BrewFloor.Brewing.Forecast;

/// <summary>What is believed of a batch before anything is read.</summary>
/// <remarks>
/// From a recipe: steepness and midpoint by temperature through the middles of the usual ranges (ale 19 °C 0.095/h and 30 h,
/// lager 11 °C 0.032/h and 81 h), a factor of e^0.5 either way (common practice, no source; straight lines of the logarithms
/// between, carried on to 8 and 22 °C and held from there, and the final's ± 1 °P are ours). Earlier batches draw all three
/// towards what they did, and narrow them; a forced ferment narrows the end to ± 0.15 °P.
/// </remarks>
public sealed record FermentationPrior
{
    private const double Tau = 0.5; // of ln B and ln M

    private const double Coldest = 8; // °C: B and M reach the ends of their usual ranges there

    private const double Warmest = 22;

    private const double WithinStrain = 0.25; // ours: how far batches of one strain differ in them

    private const double EndWithinStrain = 0.5; // °P: how far ends of one strain differ

    private FermentationPrior() { }

    /// <summary>Original extract as measured, °P.</summary>
    public DegreesPlato Original { get; private init; }

    /// <summary>Where it is expected to end, °P.</summary>
    public DegreesPlato Final { get; private init; }

    /// <summary>One standard error of that, °P.</summary>
    public DegreesPlato FinalPlusMinus { get; private init; }

    /// <summary>B, expected.</summary>
    public Frequency Steepness { get; private init; }

    /// <summary>M, expected.</summary>
    public TimeSpan Midpoint { get; private init; }

    /// <summary>One standard error of the logarithms of both.</summary>
    public double LogError { get; private init; }

    /// <summary>What a reading is off by, one standard error: 0.15 °P for a hydrometer, 0.05 for a density meter.</summary>
    public DegreesPlato ReadingPlusMinus { get; private init; }

    /// <summary>From recipe and pitching.</summary>
    /// <param name="original">2 to 35 °P.</param>
    /// <param name="attenuation">Apparent degree of fermentation expected, 30 to 105 %.</param>
    /// <param name="pitched">Temperature of the fermentation, 4 to 30 °C.</param>
    /// <param name="reading">What a reading is off by, 0.01 to 1 °P (0.15 for a hydrometer).</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<FermentationPrior> FromRecipe(
        DegreesPlato original,
        Ratio attenuation,
        Temperature pitched,
        DegreesPlato reading
    )
    {
        var refusal =
            Accepted.Between(2, 35, original.Value, "original-extract", "°P")
            ?? Accepted.Between(30, 105, attenuation.Percent, "attenuation", "%")
            ?? Accepted.Between(4, 30, pitched.DegreesCelsius, "temperature", "°C")
            ?? Accepted.Between(0.01, 1, reading.Value, "reading-error", "°P");
        if (refusal is not null)
        {
            return refusal;
        }

        var warmth = (Math.Clamp(pitched.DegreesCelsius, Coldest, Warmest) - 11) / (19 - 11);
        return new FermentationPrior
        {
            Original = original,
            Final = new(original.Value * (1 - attenuation.DecimalFractions)),
            FinalPlusMinus = new(1.0),
            Steepness = Frequency.FromHertz(Between(0.0316, 0.0949, warmth) / 3600),
            Midpoint = TimeSpan.FromHours(Between(81.2, 30, warmth)),
            LogError = Tau,
            ReadingPlusMinus = reading,
        };
    }

    /// <summary>With what the strain did before.</summary>
    /// <param name="earlier">Any number of batches at about this temperature; none changes nothing.</param>
    /// <returns>Refused outside, with the row.</returns>
    public Outcome<FermentationPrior> WithEarlier(IReadOnlyList<EarlierBatch> earlier)
    {
        for (var i = 0; i < earlier.Count; i++)
        {
            if (earlier[i].Refusal is { } refusal)
            {
                return refusal with { Row = i + 1 };
            }
        }

        if (earlier.Count == 0)
        {
            return this;
        }

        // A strain's own mean, drawn towards what is believed anyway; then a new batch about that mean.
        var (own, usual) = Weights(WithinStrain, Tau);
        var (ownEnd, planned) = Weights(EndWithinStrain, FinalPlusMinus.Value);
        var ended = Original.Value * (1 - earlier.Average(b => b.Attenuation.DecimalFractions));
        return this with
        {
            Final = new(((ownEnd * ended) + (planned * Final.Value)) / (ownEnd + planned)),
            FinalPlusMinus = new(ErrorOf(ownEnd + planned, EndWithinStrain)),
            Steepness = Frequency.FromHertz(
                Drawn(Steepness.Hertz, earlier.Average(b => Math.Log(b.Steepness.Hertz)), own, usual)
            ),
            Midpoint = TimeSpan.FromHours(
                Drawn(Midpoint.TotalHours, earlier.Average(b => Math.Log(b.Midpoint.TotalHours)), own, usual)
            ),
            LogError = Math.Min(Tau, ErrorOf(own + usual, WithinStrain)),
        };

        (double Own, double Usual) Weights(double within, double usually) =>
            (earlier.Count / (within * within), 1 / (usually * usually));

        static double ErrorOf(double weight, double within) => Math.Sqrt((1 / weight) + (within * within));
    }

    /// <summary>With the limit that a forced ferment found.</summary>
    /// <param name="limit">-1.3 °P to the original extract.</param>
    /// <returns>Refused outside.</returns>
    public Outcome<FermentationPrior> WithForcedFerment(DegreesPlato limit) =>
        Accepted.Between(-1.3, Original.Value, limit.Value, "final-extract", "°P") is { } refusal
            ? refusal
            : this with
            {
                Final = limit,
                FinalPlusMinus = new(0.15),
            };

    private static double Between(double lager, double ale, double warmth) => lager * Math.Pow(ale / lager, warmth);

    private static double Drawn(double usually, double lnOwn, double own, double usual) =>
        Math.Exp(((own * lnOwn) + (usual * Math.Log(usually))) / (own + usual));
}
