using BrewFloor.Domain.Log;
using BrewFloor.Domain.People;
using BrewFloor.Store.Backups;
using BrewFloor.Web.Account;
using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Backups;

/// <summary>For brewers and owners: how old the last backup is, and whether it was proven.</summary>
public sealed partial class BackupLine(Wording wording, BackupBook book, TimeProvider clock)
{
    private string? _line;
    private bool _isWell;

    [CascadingParameter]
    public required HttpContext Http { get; set; }

    protected override async Task OnInitializedAsync()
    {
        if (Policies.RoleOf(Http.User) is not >= Role.Brewer)
        {
            return;
        }

        var last = await book.LastMadeAsync(Http.RequestAborted);
        var now = clock.GetUtcNow();
        _isWell = BackupAge.IsWell(last, now);
        _line = last is null
            ? wording["backup-none"]
            : wording[
                last.IsProven ? "backup-proven" : "backup-not-proven",
                new Number("age", BackupAge.Of(last, now))
            ];
    }
}
