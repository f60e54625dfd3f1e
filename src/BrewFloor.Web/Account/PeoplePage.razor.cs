using BrewFloor.Domain;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.People;
using BrewFloor.Store.People;
using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Account;

/// <summary>Everybody of the house, and the links that let somebody new in.</summary>
public sealed partial class PeoplePage(Wording wording, Accounts accounts, Invites invites, TimeProvider clock)
{
    private Listed<Person> _people = [];
    private Listed<Invite> _invites = [];
    private string? _link;
    private string? _problem;

    [SupplyParameterFromForm(FormName = "invite")]
    private InviteInput? Input { get; set; }

    [CascadingParameter]
    public required HttpContext Http { get; set; }

    protected override async Task OnInitializedAsync()
    {
        Input ??= new() { Role = nameof(Role.Helper) };
        await ReadAsync();
    }

    private async Task InviteAsync()
    {
        var name = Input!.Name?.Trim();
        if (name is null or "" or { Length: > Person.LongestName } || !RoleChoice.Reads(Input.Role, out var role))
        {
            _problem = name is null or "" ? "name-missing" : "refusal.unknown-choice";
            return;
        }

        var (by, now) = (Policies.IdOf(Http.User), clock.GetUtcNow());
        var (_, secret) = await invites.MakeAsync(name, role, by, now, Http.RequestAborted);
        await Http.NoteAsync(SecurityKind.InviteMade, detail: $"{name}, {RoleNames.Of(role)}");
        _link = $"{Http.Request.Scheme}://{Http.Request.Host}{Http.Request.PathBase}/invite/{secret}";
        Input = new() { Role = Input.Role };
        await ReadAsync();
    }

    private async Task ReadAsync()
    {
        _people = await accounts.AllAsync(Http.RequestAborted);
        _invites = await invites.OpenAsync(clock.GetUtcNow(), Http.RequestAborted);
    }

    private string Standing(Person person) =>
        person switch
        {
            { PasswordHash: null } => wording["people-no-account"],
            { IsActive: false } => wording["people-gone"],
            { LockedUntil: { } until } when until > clock.GetUtcNow() => wording[
                "people-locked",
                new Number("until", until)
            ],
            _ => wording[$"role-short-{person.Role}"],
        };

    private string Line(Invite invite) =>
        wording[
            "people-invite-line",
            new("name", invite.Name),
            new("role", wording[$"role-short-{invite.Role}"]),
            new("until", invite.ExpiresAt)
        ];

    public sealed class InviteInput
    {
        public string? Name { get; set; }

        public string? Role { get; set; }
    }
}
