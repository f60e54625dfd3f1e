namespace BrewFloor.Brewing.Tanks;

/// <summary>A tank's three parts on top of each other; all in mm, mm² and mm³.</summary>
internal sealed record Stack(Section Bottom, Section Cylinder, Section Head)
{
    private Section[] Parts => [Bottom, Cylinder, Head];

    public double Height => Parts.Sum(p => p.Height);

    public double Volume => Parts.Sum(p => p.Volume);

    public double Area => Parts.Sum(p => p.AreaTo(p.Height));

    public double VolumeTo(double level) => Reached(level).Sum(r => r.Part.VolumeTo(r.Depth));

    public double AreaTo(double level) => Reached(level).Sum(r => r.Part.AreaTo(r.Depth));

    public double RadiusAt(double level)
    {
        var (part, depth) = Reached(level).LastOrDefault((Bottom, 0));
        return part.RadiusAt(depth);
    }

    public double LevelOf(double volume)
    {
        var below = 0.0;
        foreach (var part in Parts)
        {
            if (volume <= part.Volume)
            {
                return below + part.LevelOf(volume);
            }

            volume -= part.Volume;
            below += part.Height;
        }

        return Height; // full, give or take the last bit
    }

    // The parts that liquid up to a level touches, each with how deep it stands in it.
    private IEnumerable<(Section Part, double Depth)> Reached(double level)
    {
        var below = 0.0;
        foreach (var part in Parts)
        {
            if (level <= below)
            {
                yield break;
            }

            yield return (part, Math.Min(level - below, part.Height));
            below += part.Height;
        }
    }
}
