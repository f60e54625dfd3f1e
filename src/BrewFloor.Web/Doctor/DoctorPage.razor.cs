using BrewFloor.Web.Drawing;
using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Doctor;

/// <summary>How the machine, the database and the backups are, for whoever looks after them.</summary>
public sealed partial class DoctorPage(Wording wording, Checkup checkup)
{
    private IReadOnlyList<Finding> _findings = [];

    [CascadingParameter]
    public required HttpContext Http { get; set; }

    protected override async Task OnInitializedAsync() => _findings = await checkup.FindAsync(Http.RequestAborted);

    private static MarkKind MarkOf(Health health) =>
        health switch
        {
            Health.Bad => MarkKind.Overdue,
            Health.Look => MarkKind.Due,
            _ => MarkKind.InOrder,
        };
}
