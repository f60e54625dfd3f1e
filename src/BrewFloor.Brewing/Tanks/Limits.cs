namespace BrewFloor.Brewing.Tanks;

/// <summary>Beyond these a size is a slip of the unit, not a tank. Ours, no source.</summary>
internal static class Limits
{
    public const double ShortestMm = 1;

    public const double LongestMm = 20_000;

    /// <summary>The cylinder of 20 m by 20 m.</summary>
    public const double MostLitres = 6_283_185;

    public const double NarrowestCone = 20;

    public const double WidestCone = 170;
}
