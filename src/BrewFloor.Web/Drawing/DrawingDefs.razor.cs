namespace BrewFloor.Web.Drawing;

/// <summary>The textures that drawings and charts on the same page refer to; once a page.</summary>
public sealed partial class DrawingDefs
{
    // On pale beer dark ink, on dark beer light ink: in every theme, because the beer keeps its colour too.
    private static readonly (string Ink, string Colour)[] Inks = [("", "var(--on-pale)"), ("-d", "var(--on-dark)")];
}
