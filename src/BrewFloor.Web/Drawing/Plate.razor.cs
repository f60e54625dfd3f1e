using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Drawing;

/// <summary>A tank's code, like a gate number: it means "this tank" wherever it stands.</summary>
public sealed partial class Plate
{
    [Parameter, EditorRequired]
    public string Code { get; set; } = null!;

    /// <summary>Where the plate leads; left out: it leads nowhere.</summary>
    [Parameter]
    public string? Href { get; set; }

    [Parameter]
    public PlateSize Size { get; set; }

    /// <summary>Out of service: outlined.</summary>
    [Parameter]
    public bool IsIdle { get; set; }

    private string Look =>
        "plate"
        + Size switch
        {
            PlateSize.Slight => " slight",
            PlateSize.Large => " large",
            PlateSize.Back => " back",
            _ => "",
        }
        + (IsIdle ? " idle" : "");
}

/// <summary>How large a plate is.</summary>
public enum PlateSize
{
    Usual,

    /// <summary>In a line of text.</summary>
    Slight,

    /// <summary>At the head of the tank's page.</summary>
    Large,

    /// <summary>At the head of a form: the way back to the tank, large enough for a glove.</summary>
    Back,
}
