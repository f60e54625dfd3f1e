namespace BrewFloor.Brewing.Forecast;

/// <summary>Puts what is believed of a batch into the numbers of a fall.</summary>
internal static class Beliefs
{
    private const double OriginalError = 0.15; // °P

    public static Believed Of(FermentationPrior prior) =>
        new(
            [
                new Belief(prior.Final.Value, prior.FinalPlusMinus.Value),
                new Belief(prior.Original.Value, OriginalError),
                new Belief(Math.Log(prior.Steepness.Hertz * 3600), prior.LogError),
                new Belief(Math.Log(prior.Midpoint.TotalHours), prior.LogError),
                new Belief(0, Calibration.LnAsymmetry),
                new Belief(Calibration.OffMean, Calibration.Off),
            ],
            new Belief(Math.Log(Calibration.NoiseScale * prior.ReadingPlusMinus.Value), Calibration.LnNoise)
        );
}
