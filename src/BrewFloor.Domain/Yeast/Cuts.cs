using UnitsNet;

namespace BrewFloor.Domain.Yeast;

/// <summary>So much of a culture went into the wort.</summary>
public readonly record struct CulturePitched(Guid CultureId, YeastAmount Amount);

public enum HarvestedFrom
{
    Cone,
    Top,
}

/// <summary>Which part of the crop: the middle of the cone is the best of it (common practice, no source).</summary>
public enum Cut
{
    Whole,
    First,
    Middle,
    Last,
}

/// <summary>One jar of the crop: a new culture.</summary>
/// <param name="Volume">In L of slurry.</param>
/// <param name="Density">In g/mL, if weighed.</param>
public sealed record CutTaken(NewCulture NewCulture, Cut Cut, Volume Volume, Density? Density);
