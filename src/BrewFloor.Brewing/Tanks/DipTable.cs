using UnitsNet;
using UnitsNet.Units;

namespace BrewFloor.Brewing.Tanks;

/// <summary>One mark: so much stands in the tank at this level.</summary>
/// <param name="Level">In mm above the outlet plane.</param>
/// <param name="Volume">In litres.</param>
public readonly record struct DipPoint(Length Level, Volume Volume);

/// <summary>Litres at marks, best made by weighing water in; straight lines between the marks.</summary>
/// <remarks>
/// A measured mark beats any drawing: coils, wells and dip tubes displace 0.2 to 3 % (common practice, no source).
/// Nothing is guessed below the first mark and above the last.
/// </remarks>
public sealed class DipTable : IStrapping, IEquatable<DipTable>
{
    private readonly DipPoint[] _points;

    private DipTable(DipPoint[] points) => _points = points;

    /// <summary>The marks, rising.</summary>
    public IReadOnlyList<DipPoint> Points => _points;

    /// <inheritdoc/>
    public Volume Total => _points[^1].Volume;

    /// <inheritdoc/>
    public Length Height => _points[^1].Level;

    private DipPoint Low => _points[0];

    /// <summary>A table of marks as measured, from the lowest up.</summary>
    /// <param name="points">Levels in mm, 0 to 20,000, and litres from 0; both must rise from each mark to the next.</param>
    /// <returns>
    /// Refused with the row: fewer than two marks (<c>too-few-points</c>), a level out of range, a volume below 0
    /// (<c>out-of-range</c>), a mark not above the one before (<c>not-rising</c>, which must exceed <c>From</c>).
    /// </returns>
    public static Outcome<DipTable> Measured(IEnumerable<DipPoint> points)
    {
        DipPoint[] marks =
        [
            .. points.Select(p => new DipPoint(
                p.Level.ToUnit(LengthUnit.Millimeter),
                p.Volume.ToUnit(VolumeUnit.Liter)
            )),
        ];
        if (marks.Length < 2)
        {
            return new Refusal("too-few-points", "dip-table", "2", "");
        }

        return marks.Select((_, i) => RefusalOf(marks, i)).FirstOrDefault(r => r is not null) is { } refusal
            ? refusal
            : new DipTable(marks);
    }

    /// <inheritdoc/>
    public Outcome<Volume> VolumeAt(Length level)
    {
        var mm = level.Millimeters;
        if (Accepted.Between(Low.Level.Millimeters, Height.Millimeters, mm, "level", "mm") is { } refusal)
        {
            return refusal;
        }

        var (below, above) = Around(p => p.Level.Millimeters >= mm);
        var share = (mm - below.Level.Millimeters) / (above.Level.Millimeters - below.Level.Millimeters);
        return Volume.FromLiters(Between(below.Volume.Liters, above.Volume.Liters, share));
    }

    /// <inheritdoc/>
    public Outcome<Length> LevelOf(Volume volume)
    {
        var litres = volume.Liters;
        if (Accepted.Between(Low.Volume.Liters, Total.Liters, litres, "volume", "L") is { } refusal)
        {
            return refusal;
        }

        var (below, above) = Around(p => p.Volume.Liters >= litres);
        var share = (litres - below.Volume.Liters) / (above.Volume.Liters - below.Volume.Liters);
        return Length.FromMillimeters(Between(below.Level.Millimeters, above.Level.Millimeters, share));
    }

    /// <summary>The same marks.</summary>
    public bool Equals(DipTable? other) => other is not null && _points.AsSpan().SequenceEqual(other._points);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as DipTable);

    /// <inheritdoc/>
    public override int GetHashCode() => _points.Aggregate(0, HashCode.Combine);

    private static double Between(double from, double to, double share) => from + ((to - from) * share);

    private static Refusal? RefusalOf(DipPoint[] marks, int i)
    {
        var (level, litres) = (marks[i].Level.Millimeters, marks[i].Volume.Liters);
        var refusal =
            Accepted.Between(0, Limits.LongestMm, level, "level", "mm")
            ?? Accepted.Between(0, Limits.MostLitres, litres, "volume", "L")
            ?? (i == 0 ? null : NotRising(marks[i - 1].Level.Millimeters, level, Limits.LongestMm, "level", "mm"))
            ?? (i == 0 ? null : NotRising(marks[i - 1].Volume.Liters, litres, Limits.MostLitres, "volume", "L"));
        return refusal is null ? null : refusal with { Row = i + 1 };
    }

    private static Refusal? NotRising(double before, double now, double most, string what, string unit) =>
        now > before ? null : new Refusal("not-rising", what, Accepted.Down(before), Accepted.Down(most), unit);

    // The first mark that is high enough, and the one below it.
    private (DipPoint Below, DipPoint Above) Around(Predicate<DipPoint> isHighEnough)
    {
        var above = Math.Max(1, Array.FindIndex(_points, isHighEnough));
        return (_points[above - 1], _points[above]);
    }
}
