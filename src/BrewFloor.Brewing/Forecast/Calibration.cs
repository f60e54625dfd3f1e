namespace BrewFloor.Brewing.Forecast;

/// <summary>
/// How far a logistic may be off a real fall: ours, set on 1,500 simulated batches of a different model (others than those
/// the test judges by), since no brewery's data were at hand. Own batches would be better teachers.
/// </summary>
internal static class Calibration
{
    /// <summary>Readings that count in full; of more, each counts less, because the curve is off the same way for all.</summary>
    public const double Independent = 60;

    /// <summary>One standard error of the asymmetry's logarithm; it is none on average.</summary>
    public const double LnAsymmetry = 0.15;

    /// <summary>How far off a logistic a fall is on average (see <see cref="Fall"/>): flatter in the middle.</summary>
    public const double OffMean = 0.3;

    /// <summary>One standard error of that.</summary>
    public const double Off = 0.2;

    /// <summary>Of the error that a reading is said to have, the scale of a law with long tails.</summary>
    public const double NoiseScale = 0.7;

    /// <summary>One standard error of the noise's logarithm.</summary>
    public const double LnNoise = 0.3;

    /// <summary>What the end of the fall is off by besides, °P.</summary>
    public const double End = 0.15;

    /// <summary>What a time is off by besides, of the time still to go.</summary>
    public const double Time = 0.05;

    /// <summary>And of the time in which a fall changes, 1/B: the end is flat.</summary>
    public const double TimeAtEnd = 0.5;

    /// <summary>Done: so close to the end that no hydrometer tells, °P.</summary>
    public const double Done = 0.2;
}
