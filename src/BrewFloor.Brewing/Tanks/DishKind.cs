namespace BrewFloor.Brewing.Tanks;

/// <summary>The dished ends that tanks are built with; D is the inside diameter, without a straight flange.</summary>
/// <remarks>
/// The standards give both radii for the outside diameter; in sheet of 1.5 to 3 mm that is less than 2 % of the dish's
/// volume. Checks GE-03 to GE-06 in <c>docs/science/tanks.md</c>.
/// </remarks>
public enum DishKind
{
    /// <summary>ASME flanged and dished, 6 %: crown radius D, knuckle 0.06 D; depth 0.1693 D, volume 0.0810 D³.</summary>
    FlangedAndDished,

    /// <summary>DIN 28011 (Klöpper): crown radius D, knuckle 0.1 D; depth 0.1938 D, volume 0.0990 D³.</summary>
    Kloepper,

    /// <summary>DIN 28013 (Korbbogen): crown radius 0.8 D, knuckle 0.154 D; depth 0.2545 D, volume 0.1308 D³.</summary>
    Korbbogen,

    /// <summary>Half an ellipsoid of 2:1: depth D/4, volume pi D³/24.</summary>
    Ellipsoidal,
}
