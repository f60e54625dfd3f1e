using BrewFloor.Store.People;
using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Backups;

/// <summary>On the first day of a new machine: the floor from a backup, instead of an empty one.</summary>
public sealed partial class SetupRestorePage(Wording wording, FirstOwner first)
{
    /// <summary>What a restore that came to nothing has a sentence of its own for.</summary>
    internal static readonly string[] Codes =
    [
        "wrong-code",
        "nothing-sent",
        "wrong-passphrase",
        "not-a-backup",
        "backup-cut-short",
        "backup-altered",
        "backup-newer",
    ];

    private string? _problem;
    private bool _isDone;

    [SupplyParameterFromQuery]
    private string? Said { get; set; }

    [CascadingParameter]
    public required HttpContext Http { get; set; }

    protected override async Task OnInitializedAsync()
    {
        _isDone = await first.ExistsAsync(Http.RequestAborted);
        _problem =
            string.IsNullOrEmpty(Said) ? null
            : Codes.Contains(Said, StringComparer.Ordinal) ? Said
            : "other";
    }
}
