using BrewFloor.Web.Drawing;
using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Spreadsheets;

/// <summary>Every row of a spreadsheet with its fate, before anything is written.</summary>
public sealed partial class SheetFates(Wording wording)
{
    [Parameter, EditorRequired]
    public required DryRun Run { get; set; }

    private static MarkKind MarkOf(Fate fate) =>
        fate switch
        {
            Fate.Added => MarkKind.Done,
            Fate.AlreadyThere => MarkKind.OnTheServer,
            Fate.CannotBe => MarkKind.Stop,
            _ => MarkKind.NothingDue,
        };
}
