using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;
using UnitsNet;

namespace BrewFloor.Web.Yeast;

/// <summary>A culture as a jar on the fridge shelf.</summary>
public sealed partial class JarCard(Wording wording)
{
    [Parameter, EditorRequired]
    public required ShownCulture Culture { get; set; }

    private Volume Held => Volume.FromMilliliters(Culture.State.Amount.Milliliters);

    // Jars come in one litre and in five; a pack is drawn as a small empty one.
    private Volume Size => Volume.FromLiters(Held.Liters > 1 ? 5 : 1);
}
