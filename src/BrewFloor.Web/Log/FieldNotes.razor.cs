using BrewFloor.Brewing;
using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Log;

/// <summary>What stands below a field: what is wrong with it, else its hint.</summary>
public sealed partial class FieldNotes(Wording wording)
{
    [Parameter, EditorRequired]
    public required Field Field { get; set; }

    [Parameter]
    public Refusal? Problem { get; set; }

    private string Id => "f-" + Field.Name.Replace('.', '-') + "-note";
}
