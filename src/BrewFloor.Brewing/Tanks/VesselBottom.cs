using UnitsNet;
using UnitsNet.Units;

namespace BrewFloor.Brewing.Tanks;

/// <summary>What a tank stands on, inside: a cone, a dish or a flat floor.</summary>
public abstract record VesselBottom
{
    private protected VesselBottom() { }

    internal abstract Refusal? RefusalIn(double diameterMm, double outletMm);

    internal abstract Section SectionIn(double diameterMm, double outletMm);

    internal virtual VesselBottom InStoredUnits() => this;
}

/// <summary>A flat floor; levels are measured from it.</summary>
public sealed record FlatBottom : VesselBottom
{
    internal override Refusal? RefusalIn(double diameterMm, double outletMm) => null;

    internal override Section SectionIn(double diameterMm, double outletMm) => new FlatSection(diameterMm / 2);
}

/// <summary>A dish below the cylinder; levels are measured from its lowest point.</summary>
/// <param name="Kind">Its radii.</param>
/// <remarks>The few millilitres that an outlet in the middle cuts off the dish are left in.</remarks>
public sealed record DishedBottom(DishKind Kind) : VesselBottom
{
    internal override Refusal? RefusalIn(double diameterMm, double outletMm) => null;

    internal override Section SectionIn(double diameterMm, double outletMm) => new DishBelow(Dish.Of(Kind, diameterMm));
}

/// <summary>A cone down to the outlet; levels are measured from where it meets the outlet.</summary>
/// <param name="IncludedAngle">
/// In degrees from wall to opposite wall, 20 to 170: a "60° cone" leans 30° from the axis. Empty when only the height
/// was measured.
/// </param>
/// <param name="Height">In mm from the outlet plane to the cylinder. Empty when only the angle is known.</param>
/// <remarks>
/// With both given they must agree within 5 % of the height or 5 mm (two degrees of a protractor; ours, no source), and
/// the height decides: a tape measure is better than a protractor.
/// </remarks>
public sealed record ConeBottom(Angle? IncludedAngle = null, Length? Height = null) : VesselBottom
{
    private const double AgreeShare = 0.05;

    private const double AgreeMm = 5;

    internal override Refusal? RefusalIn(double diameterMm, double outletMm) =>
        (IncludedAngle?.Degrees, Height?.Millimeters) switch
        {
            (null, null) => AngleRefusal(double.NaN)! with { Code = "missing" },
            ({ } angle, null) => AngleRefusal(angle),
            (null, { } height) => HeightRefusal(height, diameterMm, outletMm),
            ({ } angle, { } height) => AngleRefusal(angle)
                ?? HeightRefusal(height, diameterMm, outletMm)
                ?? Contradiction(height, HeightOf(angle, diameterMm, outletMm)),
        };

    internal override Section SectionIn(double diameterMm, double outletMm) =>
        new ConeSection(
            outletMm / 2,
            diameterMm / 2,
            Height?.Millimeters ?? HeightOf(IncludedAngle!.Value.Degrees, diameterMm, outletMm)
        );

    internal override VesselBottom InStoredUnits() =>
        new ConeBottom(IncludedAngle?.ToUnit(AngleUnit.Degree), Height?.ToUnit(LengthUnit.Millimeter));

    private static double HeightOf(double includedDegrees, double diameterMm, double outletMm) =>
        (diameterMm - outletMm) / 2 / Math.Tan(includedDegrees / 2 * Math.PI / 180);

    private static Refusal? AngleRefusal(double degrees) =>
        Accepted.Between(Limits.NarrowestCone, Limits.WidestCone, degrees, "cone-angle", "°");

    private static Refusal? HeightRefusal(double height, double diameterMm, double outletMm) =>
        Accepted.Between(
            HeightOf(Limits.WidestCone, diameterMm, outletMm),
            Math.Min(Limits.LongestMm, HeightOf(Limits.NarrowestCone, diameterMm, outletMm)),
            height,
            "cone-height",
            "mm"
        );

    private static Refusal? Contradiction(double measured, double byAngle)
    {
        var room = Math.Max(AgreeMm, AgreeShare * byAngle);
        return Accepted.Between(byAngle - room, byAngle + room, measured, "cone-height", "mm") is { } refusal
            ? refusal with
            {
                Code = "cone-contradicts",
            }
            : null;
    }
}
