using UnitsNet;
using UnitsNet.Units;

namespace BrewFloor.Brewing.Tanks;

/// <summary>What closes a tank above its cylinder, inside.</summary>
public abstract record VesselHead
{
    private protected VesselHead() { }

    internal abstract Refusal? RefusalIn(double diameterMm);

    internal abstract Section SectionIn(double diameterMm);

    internal virtual VesselHead InStoredUnits() => this;
}

/// <summary>A lid, level with the top of the cylinder.</summary>
public sealed record FlatLid : VesselHead
{
    internal override Refusal? RefusalIn(double diameterMm) => null;

    internal override Section SectionIn(double diameterMm) => new FlatSection(diameterMm / 2);
}

/// <summary>A dished end, as on pressure vessels.</summary>
/// <param name="Kind">Its radii.</param>
public sealed record DishedHead(DishKind Kind) : VesselHead
{
    internal override Refusal? RefusalIn(double diameterMm) => null;

    internal override Section SectionIn(double diameterMm) => new DishAbove(Dish.Of(Kind, diameterMm));
}

/// <summary>A dome: a piece of a ball as high as measured.</summary>
/// <param name="Height">In mm above the cylinder, at most half the diameter.</param>
public sealed record DomedHead(Length Height) : VesselHead
{
    internal override Refusal? RefusalIn(double diameterMm) =>
        Accepted.Between(Limits.ShortestMm, diameterMm / 2, Height.Millimeters, "dome-height", "mm");

    internal override Section SectionIn(double diameterMm) =>
        new DishAbove(new DomeDish(diameterMm / 2, Height.Millimeters));

    internal override VesselHead InStoredUnits() => new DomedHead(Height.ToUnit(LengthUnit.Millimeter));
}
