using BrewFloor.Brewing.Extract;
using BrewFloor.Brewing.Forecast;
using UnitsNet;

namespace BrewFloor.Brewing.Tests.Forecast;

/// <summary>
/// A batch of another model than the forecast's: three sugars taken up one after the other (Monod terms, repression by the
/// sugar before), inhibition by ethanol, a lag, yeast that grows by Balling's yield. All constants are ours, chosen so that
/// the falls look like usual ales and lagers; some batches get stuck. Readings are uneven, noisy, rounded, and three in a
/// hundred are wrong.
/// </summary>
internal sealed class SimulatedBatch
{
    private const double Step = 0.5; // h

    private const double End = 900; // h

    private const double YeastYield = 0.0532; // Balling

    private readonly double[] _extract;

    /// <param name="sensorEvery">In h; null: read by hand, two or three times a day or less.</param>
    public SimulatedBatch(int seed, double? sensorEvery = null)
    {
        var chance = new Random(seed);
        IsLager = chance.NextDouble() < 0.35;
        Original = Even(chance, 9, 18);
        Celsius = IsLager ? Even(chance, 9, 13) : Even(chance, 17, 22);
        IsStuck = chance.NextDouble() < 0.05;
        _extract = Run(Draw(chance));
        Final = _extract[^1];
        Readings = Read(chance, sensorEvery);
        HasHistory = chance.NextDouble() < 0.5;
        Expected = Math.Max(-0.04 * Original, Ideal + Normal(chance, HasHistory ? 0.5 : 1.0));
    }

    public bool IsLager { get; }

    public bool IsStuck { get; }

    public bool HasHistory { get; }

    public double Original { get; }

    public double Celsius { get; }

    /// <summary>Where it really ends.</summary>
    public double Final { get; }

    /// <summary>Where it would end if it didn't get stuck.</summary>
    public double Ideal { get; private set; }

    /// <summary>Where recipe or history say it ends.</summary>
    public double Expected { get; }

    public double Noise { get; private set; }

    public IReadOnlyList<GravityReading> Readings { get; }

    public double At(double hours)
    {
        var place = Math.Clamp(hours / Step, 0, _extract.Length - 1.001);
        var i = (int)place;
        return _extract[i] + ((place - i) * (_extract[i + 1] - _extract[i]));
    }

    public double TimeTo(double gravity) => Array.FindIndex(_extract, e => e <= gravity) * Step;

    public FermentationPrior Prior()
    {
        var prior = FermentationPrior
            .FromRecipe(
                new(Original),
                Ratio.FromDecimalFractions(1 - (Expected / Original)),
                Temperature.FromDegreesCelsius(Celsius),
                new(0.15)
            )
            .Value;
        return HasHistory
            ? prior
                .WithEarlier([
                    new(Ratio.FromDecimalFractions(1 - (Expected / Original)), prior.Steepness, prior.Midpoint),
                ])
                .Value
            : prior;
    }

    private sealed record Constants(double[] Sugars, double[] Rates, double Lag, double Yeast, double StuckAt);

    private Constants Draw(Random chance)
    {
        var fermentable = Math.Clamp(0.66 + Normal(chance, 0.04), 0.52, 0.78) * Original;
        var (glucose, triose) = (Even(chance, 0.13, 0.23), Even(chance, 0.13, 0.23));
        Ideal = Original - (fermentable / 0.81);
        var warmth = 1.2 * Math.Exp(0.12 * (Celsius - 20)) * Math.Exp(Normal(chance, 0.25));
        return new Constants(
            [glucose * fermentable, (1 - glucose - triose) * fermentable, triose * fermentable],
            [1.3 * warmth, 1.0 * warmth, 0.5 * warmth * Math.Exp(Normal(chance, 0.2))],
            (IsLager ? 14 : 6) * Math.Exp(Normal(chance, 0.35)),
            Even(chance, 0.05, 0.12),
            IsStuck ? Even(chance, 0.45, 0.85) : 2
        );
    }

    // Extract as apparent, every half hour, by Heun's rule.
    private double[] Run(Constants c)
    {
        var state = new[] { c.Sugars[0], c.Sugars[1], c.Sugars[2], c.Yeast, 1.0 };
        var all = c.Sugars.Sum();
        var extract = new double[(int)(End / Step) + 1];
        for (var i = 0; i < extract.Length; i++)
        {
            extract[i] = Original - ((all - state[0] - state[1] - state[2]) / 0.81);
            var first = Slope(state, i * Step, c, all);
            var second = Slope([.. state.Zip(first, (s, d) => s + (Step * d))], (i + 1) * Step, c, all);
            for (var k = 0; k < state.Length; k++)
            {
                state[k] = Math.Max(0, state[k] + (Step / 2 * (first[k] + second[k])));
            }
        }

        return extract;
    }

    private static double[] Slope(double[] s, double hours, Constants c, double all)
    {
        var (g, m, t, yeast, vigour) = (Math.Max(0, s[0]), Math.Max(0, s[1]), Math.Max(0, s[2]), s[3], s[4]);
        var gone = all - g - m - t;
        var ethanol = 0.4839 * gone; // % by weight, nearly
        var awake = 1 - Math.Exp(-hours / c.Lag);
        var active = yeast * vigour * awake * Math.Max(0, 1 - (ethanol / 9));
        var takesG = c.Rates[0] * active * g / (0.3 + g);
        var takesM = c.Rates[1] * active * m / (1.5 + m) * (0.5 / (0.5 + g));
        var takesT = c.Rates[2] * active * t / (1.5 + t) * (0.5 / (0.5 + g)) * (1.5 / (1.5 + m));
        var grown = YeastYield * (takesG + takesM + takesT);
        var tires = gone > c.StuckAt * all ? -vigour / 6 : 0;
        return [-takesG, -takesM, -takesT, grown, tires];
    }

    private List<GravityReading> Read(Random chance, double? sensorEvery)
    {
        Noise = Even(chance, 0.05, 0.25);
        var byHand = new[] { 4.0, 8, 12, 24 }[chance.Next(4)] * (IsLager ? 1.5 : 1);
        var interval = sensorEvery ?? byHand;
        var inGravity = chance.Next(2) == 0;
        var readings = new List<GravityReading>();
        for (var hours = Even(chance, 0, 6); hours < End - 100; hours += interval * Even(chance, 0.5, 1.5))
        {
            var wrong = chance.NextDouble() < 0.03;
            var off = wrong ? Even(chance, 0.8, 3) * (chance.Next(2) == 0 ? -1 : 1) : Normal(chance, Noise);
            var value = Math.Clamp(At(hours) + off, -1.2, 30);
            readings.Add(new(TimeSpan.FromHours(hours), new(inGravity ? InGravity(value) : Math.Round(value, 1))));
        }

        return readings;
    }

    private static double InGravity(double extract)
    {
        var gravity = new DegreesPlato(extract).ToGravity().Value.Value;
        return DegreesPlato.From(SpecificGravity.Of(Math.Round(gravity, 3))).Value.Value;
    }

    private static double Even(Random chance, double from, double to) => from + ((to - from) * chance.NextDouble());

    private static double Normal(Random chance, double error) =>
        error * Math.Sqrt(-2 * Math.Log(1 - chance.NextDouble())) * Math.Cos(2 * Math.PI * chance.NextDouble());
}
