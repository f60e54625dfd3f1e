using BrewFloor.Brewing.Extract;
using BrewFloor.Domain.Log;
using UnitsNet;

namespace BrewFloor.Domain.Batches;

/// <summary>What a gravity that was read does to a batch.</summary>
internal static class Gravities
{
    // A sensor that reports every hour fills these in eight days: from then on the older half is thinned.
    private const int Kept = 200;

    /// <summary>One more reading; an unreadable one, which no guard lets in, changes nothing.</summary>
    public static BatchState WithGravity(this BatchState batch, Guid tankId, GravityRead? read, Moment moment) =>
        read?.Gravity20 is { } gravity
            ? batch with
            {
                Gravities = Thinned([
                    .. batch.Gravities,
                    new GravityFact(moment, tankId, gravity) { Instrument = read.Instrument },
                ]),
            }
            : batch;

    /// <summary>Without the reading of the older half that its neighbours of the same tank stand in for best; the first stays.</summary>
    private static Listed<GravityFact> Thinned(Listed<GravityFact> readings)
    {
        if (readings.Count <= Kept)
        {
            return readings;
        }

        var spare = Spare(readings);
        return [.. readings.Where((_, i) => i != spare)];
    }

    // One walk, for a sensor's log is long: of each tank the two readings before the one at hand.
    private static int Spare(Listed<GravityFact> readings)
    {
        var (spare, least) = (1, TimeSpan.MaxValue);
        Dictionary<Guid, (int Before, int Middle)> walked = [];
        for (var i = 0; i < readings.Count; i++)
        {
            var (before, middle) = walked.GetValueOrDefault(readings[i].TankId, (-1, -1));
            walked[readings[i].TankId] = (middle, i);
            if (before < 0 || middle >= readings.Count / 2)
            {
                continue;
            }

            var gap = readings[i].Moment.At - readings[before].Moment.At;
            if (gap < least || (gap == least && middle < spare))
            {
                (spare, least) = (middle, gap);
            }
        }

        return spare;
    }

    /// <summary>Original gravity after wort of <paramref name="gravity"/> came to what was filled in before.</summary>
    /// <remarks>
    /// Weighted by volume: gravity points are extract per litre, so they add up (within 0.0001 of mixing by mass). Wort
    /// whose gravity nobody read is taken to be the same wort.
    /// </remarks>
    public static BatchState WithWort(this BatchState batch, Volume volume, SpecificGravity? gravity)
    {
        var (before, more) = (batch.Litres.FilledIn.Liters, volume.Liters);
        if (gravity is not { } added)
        {
            return batch;
        }

        if (batch.OriginalGravity is { } there)
        {
            if (before <= 0 || more <= 0)
            {
                return batch; // nobody knows how much it was mixed into
            }

            var mixed = ((there.Value * before) + (added.Value * more)) / (before + more);
            return batch with { OriginalGravity = SpecificGravity.Of(mixed) };
        }

        return before > 0 ? batch : batch with { OriginalGravity = added };
    }
}
