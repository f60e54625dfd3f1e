using BrewFloor.Brewing.Extract;

namespace BrewFloor.Brewing.Forecast;

/// <summary>What may be wrong with a batch.</summary>
public enum SignKind
{
    /// <summary>It stands higher than 39 of 40 such batches would: above the 95 % band of what was believed.</summary>
    Slow,

    /// <summary>
    /// It doesn't fall any more, and is above where it should end by more than 0.5 °P and 1.5 errors of that expectation:
    /// a forced ferment makes it sharp.
    /// </summary>
    Stuck,

    /// <summary>A reading is far off all others: read again.</summary>
    DoubtfulReading,
}

/// <summary>Something that looks wrong, with the numbers it rests on.</summary>
/// <param name="Kind">What.</param>
/// <param name="Reading">Of which reading, counted from 1: the doubtful one, else the last.</param>
/// <param name="Seen">What was read there, °P; for a stuck batch its fall in a day.</param>
/// <param name="Expected">What it is held against, °P: the fall's own value, the top of the prior's band, the expected end.</param>
/// <param name="Error">One standard error of the difference, or of the fall in a day, °P.</param>
public sealed record Sign(SignKind Kind, int Reading, DegreesPlato Seen, DegreesPlato Expected, DegreesPlato Error)
{
    private const double Doubtful = 3.5; // standard errors

    private const double LeastDoubt = 0.5; // °P

    private const double StuckAbove = 0.5; // °P over the expected end (common practice, no source)

    private const double StuckErrors = 1.5; // and so many errors of that expectation over it (ours: 1 in 23 falsely)

    private const double StuckSlope = 0.1; // °P a day (the same)

    private const double Window = 72; // h (the same)

    internal static IEnumerable<Sign> In(FermentationPrior prior, IReadOnlyList<GravityReading> readings, Fitted fitted)
    {
        var doubtful = new HashSet<int>();
        for (var i = 0; i < readings.Count; i++)
        {
            var (read, expected) = (readings[i].Extract.Value, fitted.Best.At(readings[i].After.TotalHours));
            var off = Math.Abs(read - expected);
            if (off > Math.Max(LeastDoubt, Doubtful * fitted.Noise))
            {
                doubtful.Add(i);
                yield return new Sign(SignKind.DoubtfulReading, i + 1, new(read), new(expected), new(fitted.Noise));
            }
        }

        (int At, double Hours, double Extract)[] sound =
        [
            .. readings
                .Select((r, i) => (At: i, r.After.TotalHours, r.Extract.Value))
                .Where(r => !doubtful.Contains(r.At)),
        ];
        if (sound.Length == 0)
        {
            yield break;
        }

        if (StuckIn(prior, sound, fitted.Noise) is { } stuck)
        {
            yield return stuck;
        }
        else if (SlowIn(prior, sound[^1]) is { } slow)
        {
            yield return slow;
        }
    }

    private static Sign? SlowIn(FermentationPrior prior, (int At, double Hours, double Extract) last)
    {
        var believed = Beliefs.Of(prior);
        if (last.Extract <= Fall.Of([.. believed.Shape.Select(b => b.Mean)]).At(last.Hours))
        {
            return null; // as fast as believed: no band is needed
        }

        var falls = new Fitted(believed, []).Falls;
        var band = Bands.Of([.. falls.Select(f => (f.Fall.At(last.Hours), f.Weight))], prior.ReadingPlusMinus.Value);
        return last.Extract > band.High95
            ? new Sign(SignKind.Slow, last.At + 1, new(last.Extract), new(band.High95), prior.ReadingPlusMinus)
            : null;
    }

    // Three readings at least over two days, a slope that is no fall, and too high.
    private static Sign? StuckIn(FermentationPrior prior, (int At, double Hours, double Extract)[] sound, double noise)
    {
        var last = sound[^1];
        var window = sound.Where(r => r.Hours >= last.Hours - Window).ToArray();
        if (window.Length < 3 || last.Hours - window[0].Hours < 40)
        {
            return null;
        }

        var (mt, my) = (window.Average(r => r.Hours), window.Average(r => r.Extract));
        var spread = window.Sum(r => Math.Pow(r.Hours - mt, 2));
        var perDay = 24 * window.Sum(r => (r.Hours - mt) * (r.Extract - my)) / spread;
        var error = 24 * noise / Math.Sqrt(spread);
        var above = my - prior.Final.Value;
        var began = prior.Original.Value - my > 0.5 || last.Hours > 2 * prior.Midpoint.TotalHours;
        return
            began
            && above > Math.Max(StuckAbove, StuckErrors * prior.FinalPlusMinus.Value)
            && -perDay < Math.Max(StuckSlope, error)
            ? new Sign(SignKind.Stuck, last.At + 1, new(-perDay), prior.Final, new(error))
            : null;
    }
}
