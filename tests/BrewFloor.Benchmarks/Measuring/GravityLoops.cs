using BrewFloor.Brewing.Extract;

namespace BrewFloor.Benchmarks.Measuring;

/// <summary>Many gravities into °P: through the type with its range, and by the two cubics alone.</summary>
internal sealed class GravityLoops
{
    private readonly SpecificGravity[] _gravities;
    private readonly double[] _bare;
    private double _sum; // kept, so that no loop can be left out

    public GravityLoops(int many)
    {
        // From 0.998 to 1.128, in no order, as a log has them.
        var chance = new Random(1);
        _gravities =
        [
            .. Enumerable.Range(0, many).Select(_ => SpecificGravity.Of(0.998 + (0.13 * chance.NextDouble()))),
        ];
        _bare = [.. _gravities.Select(g => g.Value)];
    }

    public Task OursAsync()
    {
        _sum = Ours();
        return Task.CompletedTask;
    }

    public Task BareAsync()
    {
        _sum = Bare();
        return Task.CompletedTask;
    }

    /// <exception cref="InvalidOperationException">The loops disagree: the comparison would mean nothing.</exception>
    public void DemandSameExtract()
    {
        var (ours, bare) = (Ours(), Bare());
        if (Math.Abs(ours - bare) > 1e-9 * Math.Abs(bare) || !(bare > 0))
        {
            throw new InvalidOperationException($"The bare loop computes something else: {bare}, ours {ours}.");
        }
    }

    private double Ours()
    {
        var sum = 0.0;
        foreach (var gravity in _gravities)
        {
            sum += DegreesPlato.From(gravity).Value.Value;
        }

        return sum;
    }

    private double Bare()
    {
        var sum = 0.0;
        foreach (var s in _bare)
        {
            sum +=
                s <= 1.083
                    ? (((((135.997 * s) - 630.272) * s) + 1111.14) * s) - 616.868
                    : (((((182.46007 * s) - 775.68212) * s) + 1262.7794) * s) - 669.56218;
        }

        return sum;
    }
}
