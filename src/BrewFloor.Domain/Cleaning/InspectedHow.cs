namespace BrewFloor.Domain.Cleaning;

/// <summary>How it was looked at: a judgement by eye is worth what the eye can see.</summary>
public enum InspectedHow
{
    Eye,
    Torch,
    Swab,
    RinseWater,
}
