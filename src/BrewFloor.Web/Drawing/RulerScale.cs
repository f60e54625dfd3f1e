namespace BrewFloor.Web.Drawing;

/// <summary>A named place on a ruler.</summary>
public readonly record struct RulerPlace(double Value, string Words);

/// <summary>A stretch of a ruler.</summary>
public readonly record struct RulerStretch(double From, double To);

/// <summary>Where values fall on a ruler, in percent of its length; what lies beyond an end is shown at the end.</summary>
/// <param name="From">The left end.</param>
/// <param name="To">The right end, above <paramref name="From"/>.</param>
internal readonly record struct RulerScale(double From, double To)
{
    public double PercentOf(double value) => Math.Clamp((value - From) / (To - From), 0, 1) * 100;

    public string At(double value) => $"--x:{Px.Of(PercentOf(value))}%";

    public string Along(RulerStretch stretch)
    {
        var start = PercentOf(stretch.From);
        return $"--x:{Px.Of(start)}%;--w:{Px.Of(PercentOf(stretch.To) - start)}%";
    }

    /// <summary>The distance of two ticks; a tenth of a percent matters here, because it adds up.</summary>
    public string Step(double step) =>
        $"--step:{(step / (To - From) * 100).ToString("0.###", System.Globalization.CultureInfo.InvariantCulture)}%";
}
