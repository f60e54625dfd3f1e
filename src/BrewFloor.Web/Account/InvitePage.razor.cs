using BrewFloor.Domain.Log;
using BrewFloor.Store.People;
using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Account;

/// <summary>Somebody opens the link they were given: they choose a name, and a password or a passkey.</summary>
public sealed partial class InvitePage(
    Wording wording,
    Invites invites,
    IServiceProvider services,
    NavigationManager navigation,
    TimeProvider clock
)
{
    private InviteFound? _found;
    private string? _problem;

    [Parameter]
    public required string Secret { get; set; }

    [SupplyParameterFromForm(FormName = "invite")]
    private InvitedInput? Input { get; set; }

    [SupplyParameterFromQuery]
    private string? Passkey { get; set; }

    [CascadingParameter]
    public required HttpContext Http { get; set; }

    protected override async Task OnInitializedAsync()
    {
        _found = await invites.FindAsync(Secret, clock.GetUtcNow(), Http.RequestAborted);
        Input ??= new() { Name = Good?.Name };
        _problem = Passkey switch
        {
            "failed" => "access-failed",
            "taken" => "invite-name-taken",
            _ => null,
        };
    }

    private async Task ComeInAsync()
    {
        var name = Input!.Name?.Trim() ?? "";
        _problem = name is "" or { Length: > Person.LongestName }
            ? "name-missing"
            : PasswordProblem.With(Input.Password, name);
        if (_problem is not null)
        {
            return;
        }

        var arrivals = services.GetRequiredService<Arrivals>();
        switch (await arrivals.WithPasswordAsync(Http, Secret, name, Input.Password!))
        {
            case InviteUse.Welcome:
                navigation.NavigateTo("");
                break;
            case InviteUse.NameTaken:
                _problem = "invite-name-taken";
                break;
            case InviteUse.No(var why):
                _found = why;
                break;
        }
    }

    private Invite? Good => (_found as InviteFound.Good)?.Invite;

    private string WhyNot =>
        _found switch
        {
            InviteFound.Expired(var at) => wording["invite-expired", new Number("at", at)],
            InviteFound.Used => wording["invite-used"],
            _ => wording["invite-unknown"],
        };

    public sealed class InvitedInput
    {
        public string? Name { get; set; }

        public string? Password { get; set; }
    }
}
