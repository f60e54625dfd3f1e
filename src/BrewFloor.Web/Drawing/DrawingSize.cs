namespace BrewFloor.Web.Drawing;

/// <summary>How large a tank is drawn.</summary>
/// <param name="Height">Of the whole drawing with gauge and legs, px.</param>
/// <param name="WidestBody">The body is never wider than this, px: the height gives way.</param>
/// <remarks>From 200 px on, fittings are drawn at full size and the tank gets a litre scale.</remarks>
public readonly record struct DrawingSize(double Height, double WidestBody = 1000)
{
    private const double LargeFrom = 200;

    /// <summary>On the tank's own page: the read-outs beside it still fit a phone of 360 px.</summary>
    public static DrawingSize Page => new(400, 124);

    /// <summary>In lists and on labels.</summary>
    public static DrawingSize Small => new(80, 76);

    internal bool IsLarge => Height >= LargeFrom;
}

/// <summary>The scale of a whole floor: on a phone the heights go by square root, on a desk all tanks stand at one scale.</summary>
/// <param name="TallestMm">Floor to top of the tallest tank.</param>
public readonly record struct FloorScale(double TallestMm)
{
    private const double PhoneHeight = 108;

    private const double PhoneWidth = 78;

    private const double DeskBodyHeight = 180;

    /// <summary>The scale that fits all of these; any scale when there are none.</summary>
    public static FloorScale Of(IEnumerable<TankFigure> figures) =>
        new(figures.Select(HeightMm).DefaultIfEmpty(1).Max());

    /// <summary>The height by square root, so that a bucket is still read beside a tall tank.</summary>
    public DrawingSize SizeOf(TankFigure figure) =>
        new(PhoneHeight * Math.Sqrt(HeightMm(figure) / TallestMm), PhoneWidth);

    /// <summary>Px per mm on the desk, the same for every tank.</summary>
    internal double DeskScale => DeskBodyHeight / TallestMm;

    private static double HeightMm(TankFigure figure) => figure.Shape.Height.Millimeters + figure.Legs.Millimeters;
}
