using BrewFloor.Domain.People;
using BrewFloor.Domain.Tanks;
using BrewFloor.Web.Account;
using BrewFloor.Web.Drawing;
using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Tanks;

/// <summary>The ports of a tank, what is on each, through what, and whether it fits.</summary>
public sealed partial class PortsPart(Wording wording)
{
    [Parameter, EditorRequired]
    public required Bay Bay { get; set; }

    [CascadingParameter]
    public required HttpContext Http { get; set; }

    private bool MayEdit => Policies.RoleOf(Http.User) >= Role.Brewer && !Bay.Tank.IsRetired;

    private bool MayLog => Policies.RoleOf(Http.User) >= Role.Helper;

    private IReadOnlyList<MountedPort> Mounted => [.. Bay.Tank.Ports.Select(port => new MountedPort(port, On(port)))];

    private Fitting? On(Port port) => Bay.State.Fitted.FirstOrDefault(fitting => fitting.Port == port.Number);

    private bool IsLeftOpen(Port port) => Bay.State.ThatCameOff().Any(gone => gone.Port == port.Number);
}
