using BrewFloor.Domain.Jobs;
using BrewFloor.Web.Account;
using BrewFloor.Web.Drawing;
using BrewFloor.Web.Hosting;
using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Jobs;

/// <summary>One job: what, since when, because of which numbers; to do, to take, to put off.</summary>
public sealed partial class JobRow(Wording wording)
{
    [Parameter, EditorRequired]
    public required ShownJob Shown { get; set; }

    [Parameter, EditorRequired]
    public required DateTimeOffset Now { get; set; }

    [CascadingParameter]
    public required HttpContext Http { get; set; }

    private string UrgencyClass =>
        Shown.At(Now) switch
        {
            Urgency.Overdue => "overdue",
            Urgency.Due => "due",
            _ => "soon",
        };

    private MarkKind UrgencyMark =>
        Shown.At(Now) switch
        {
            Urgency.Overdue => MarkKind.Overdue,
            Urgency.Due => MarkKind.Due,
            _ => MarkKind.Soon,
        };

    private bool IsMine => Shown.Open.TakenBy == Policies.IdOf(Http.User);

    // A brewer frees what somebody took who is away.
    private bool IsBrewers => Policies.RoleOf(Http.User) >= Domain.People.Role.Brewer;

    private string Back => LocalPaths.Here(Http);

    // The entry that gets it done.
    private string? DoHref => JobWays.HrefOf(Shown);
}
