namespace BrewFloor.Brewing.Tanks;

/// <summary>One part of a tank between two levels, round about the axis; all in mm, mm² and mm³.</summary>
internal abstract record Section
{
    public abstract double Height { get; }

    public double Volume => VolumeTo(Height);

    public abstract double RadiusAt(double z);

    /// <summary>What it holds from its lower end up to <paramref name="z"/>.</summary>
    public abstract double VolumeTo(double z);

    /// <summary>The wall from its lower end up to <paramref name="z"/>.</summary>
    public abstract double AreaTo(double z);

    public abstract double LevelOf(double volume);
}

/// <summary>A flat bottom or a lid: no height, all area.</summary>
internal sealed record FlatSection(double Radius) : Section
{
    public override double Height => 0;

    public override double RadiusAt(double z) => Radius;

    public override double VolumeTo(double z) => 0;

    public override double AreaTo(double z) => Math.PI * Radius * Radius;

    public override double LevelOf(double volume) => 0;
}

/// <summary>A cylinder.</summary>
internal sealed record CylinderSection(double Radius, double Length) : Section
{
    public override double Height => Length;

    public override double RadiusAt(double z) => Radius;

    public override double VolumeTo(double z) => Math.PI * Radius * Radius * z;

    public override double AreaTo(double z) => 2 * Math.PI * Radius * z;

    public override double LevelOf(double volume) => volume / (Math.PI * Radius * Radius);
}

/// <summary>A cone cut off at the outlet, wider above.</summary>
internal sealed record ConeSection(double Outlet, double Radius, double Length) : Section
{
    // How much wider per millimetre of height: the tangent of half the included angle.
    private double Slope => (Radius - Outlet) / Length;

    public override double Height => Length;

    public override double RadiusAt(double z) => Outlet + (z * Slope);

    public override double VolumeTo(double z)
    {
        var r = RadiusAt(z);
        return Math.PI * z / 3 * ((Outlet * Outlet) + (Outlet * r) + (r * r));
    }

    public override double AreaTo(double z)
    {
        var r = RadiusAt(z);
        return Math.PI * (Outlet + r) * double.Hypot(z, r - Outlet);
    }

    // The closed cone up to z is a cube of its radius: so its radius is a cube root.
    public override double LevelOf(double volume) =>
        (Math.Cbrt(Math.Pow(Outlet, 3) + (3 * volume * Slope / Math.PI)) - Outlet) / Slope;
}

/// <summary>A dish below the cylinder, its rim up.</summary>
internal sealed record DishBelow(Dish Dish) : Section
{
    public override double Height => Dish.Depth;

    public override double RadiusAt(double z) => Dish.RadiusAt(Dish.Depth - z);

    public override double VolumeTo(double z) => Dish.VolumeTo(Dish.Depth) - Dish.VolumeTo(Dish.Depth - z);

    public override double AreaTo(double z) => Dish.AreaTo(Dish.Depth) - Dish.AreaTo(Dish.Depth - z);

    public override double LevelOf(double volume) => Rising.Where(VolumeTo, volume, 0, Height);
}

/// <summary>A dish above the cylinder, its rim down.</summary>
internal sealed record DishAbove(Dish Dish) : Section
{
    public override double Height => Dish.Depth;

    public override double RadiusAt(double z) => Dish.RadiusAt(z);

    public override double VolumeTo(double z) => Dish.VolumeTo(z);

    public override double AreaTo(double z) => Dish.AreaTo(z);

    public override double LevelOf(double volume) => Rising.Where(VolumeTo, volume, 0, Height);
}
