using System.Globalization;

namespace BrewFloor.Web.Drawing;

/// <summary>The colour a beer is drawn in.</summary>
/// <remarks>
/// Steps picked by eye for beer in a tank-wide layer (common practice, no source): paler than in the glass, never black,
/// so that the texture on it can be told.
/// </remarks>
internal static class BeerColour
{
    /// <summary>Above this, textures on the beer are light.</summary>
    public const double DarkFromEbc = 40;

    private static readonly (double Ebc, double Red, double Green, double Blue)[] Steps =
    [
        (2, 244, 222, 140),
        (6, 236, 196, 92),
        (10, 226, 170, 62),
        (16, 210, 138, 44),
        (24, 186, 104, 36),
        (35, 150, 72, 32),
        (50, 106, 48, 26),
        (70, 70, 34, 22),
        (100, 48, 26, 20),
    ];

    /// <summary>As <c>#rrggbb</c>; below 2 and above 100 EBC the nearest step.</summary>
    public static string Of(double ebc)
    {
        var upper = Math.Max(1, Array.FindIndex(Steps, step => ebc <= step.Ebc));
        if (ebc > Steps[^1].Ebc)
        {
            upper = Steps.Length - 1;
        }

        var (from, to) = (Steps[upper - 1], Steps[upper]);
        var share = Math.Clamp((ebc - from.Ebc) / (to.Ebc - from.Ebc), 0, 1);
        return $"#{Hex(from.Red, to.Red, share)}{Hex(from.Green, to.Green, share)}{Hex(from.Blue, to.Blue, share)}";
    }

    private static string Hex(double from, double to, double share) =>
        ((int)Math.Round(from + ((to - from) * share))).ToString("x2", CultureInfo.InvariantCulture);
}
