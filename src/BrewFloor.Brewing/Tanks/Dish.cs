namespace BrewFloor.Brewing.Tanks;

/// <summary>A dished end, seen from its rim: all distances are from the rim towards the crown, in mm.</summary>
internal abstract record Dish
{
    public abstract double Depth { get; }

    public abstract double RadiusAt(double fromRim);

    public abstract double VolumeTo(double fromRim);

    public abstract double AreaTo(double fromRim);

    public static Dish Of(DishKind kind, double diameter) =>
        kind switch
        {
            DishKind.FlangedAndDished => new KnuckledDish(diameter, diameter, 0.06 * diameter),
            DishKind.Kloepper => new KnuckledDish(diameter, diameter, 0.10 * diameter),
            DishKind.Korbbogen => new KnuckledDish(diameter, 0.8 * diameter, 0.154 * diameter),
            DishKind.Ellipsoidal => new EllipsoidalDish(diameter / 2, diameter / 4),
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a kind of dish."),
        };
}

/// <summary>A crown of one radius, joined to the cylinder by a knuckle of a smaller one.</summary>
internal sealed record KnuckledDish(double Diameter, double Crown, double Knuckle) : Dish
{
    // Of the circle that the knuckle's centre makes about the axis.
    private double Ring => (Diameter / 2) - Knuckle;

    // Crown and knuckle touch where the line through both centres meets them.
    private double CosineAtJoint => Math.Sqrt(1 - Math.Pow(Ring / (Crown - Knuckle), 2));

    private double Joint => Knuckle * CosineAtJoint;

    public override double Depth => Crown - ((Crown - Knuckle) * CosineAtJoint);

    public override double RadiusAt(double fromRim) =>
        fromRim <= Joint ? Ring + Half(fromRim) : Math.Sqrt((Depth - fromRim) * ((2 * Crown) - Depth + fromRim));

    public override double VolumeTo(double fromRim) =>
        fromRim <= Joint
            ? KnuckleVolume(fromRim)
            : KnuckleVolume(Joint) + Cap.Volume(Crown, Depth - Joint) - Cap.Volume(Crown, Depth - fromRim);

    public override double AreaTo(double fromRim)
    {
        var knuckle = Math.Min(fromRim, Joint);
        return 2
            * Math.PI
            * ((Knuckle * ((Ring * Math.Asin(knuckle / Knuckle)) + knuckle)) + (Crown * (fromRim - knuckle)));
    }

    private double Half(double x) => Math.Sqrt((Knuckle * Knuckle) - (x * x));

    // The integral of pi times (ring + half chord) squared.
    private double KnuckleVolume(double x) =>
        Math.PI
        * (
            (Ring * Ring * x)
            + (Ring * ((x * Half(x)) + (Knuckle * Knuckle * Math.Asin(x / Knuckle))))
            + (Knuckle * Knuckle * x)
            - (x * x * x / 3)
        );
}

/// <summary>Half an ellipsoid of revolution, flatter than a ball.</summary>
internal sealed record EllipsoidalDish(double Radius, double Short) : Dish
{
    public override double Depth => Short;

    public override double RadiusAt(double fromRim) => Radius * Math.Sqrt(1 - Math.Pow(fromRim / Short, 2));

    public override double VolumeTo(double fromRim) =>
        Math.PI * Radius * Radius * (fromRim - (Math.Pow(fromRim, 3) / (3 * Short * Short)));

    public override double AreaTo(double fromRim)
    {
        var bend = Math.Sqrt((Radius * Radius) - (Short * Short)) / (Short * Short);
        return Math.PI
            * Radius
            * ((fromRim * Math.Sqrt(1 + Math.Pow(bend * fromRim, 2))) + (Math.Asinh(bend * fromRim) / bend));
    }
}

/// <summary>A piece of a ball, at most half of it.</summary>
internal sealed record DomeDish(double Radius, double Rise) : Dish
{
    private double Ball => ((Radius * Radius) + (Rise * Rise)) / (2 * Rise);

    public override double Depth => Rise;

    public override double RadiusAt(double fromRim) => Math.Sqrt((Rise - fromRim) * ((2 * Ball) - Rise + fromRim));

    public override double VolumeTo(double fromRim) => Cap.Volume(Ball, Rise) - Cap.Volume(Ball, Rise - fromRim);

    public override double AreaTo(double fromRim) => 2 * Math.PI * Ball * fromRim;
}

/// <summary>The cap of a ball.</summary>
internal static class Cap
{
    public static double Volume(double ball, double height) => Math.PI * height * height * ((3 * ball) - height) / 3;
}
