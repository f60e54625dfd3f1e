using BrewFloor.Domain;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.People;
using BrewFloor.Store.People;
using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Account;

/// <summary>What one person may, and what they are signed in with.</summary>
public sealed partial class PersonPage(
    Wording wording,
    Accounts accounts,
    Sessions sessions,
    Passwords passwords,
    NavigationManager navigation,
    TimeProvider clock
)
{
    private Person? _person;
    private Listed<Session> _sessions = [];
    private string? _problem;
    private string? _password;

    [Parameter]
    public Guid Id { get; set; }

    [SupplyParameterFromForm(FormName = "person")]
    private PersonInput? Input { get; set; }

    [CascadingParameter]
    public required HttpContext Http { get; set; }

    protected override async Task OnInitializedAsync()
    {
        _person = await accounts.ByIdAsync(Id, Http.RequestAborted);
        if (_person is not { PasswordHash: not null })
        {
            navigation.NotFound();
            return;
        }

        Input ??= new() { Role = _person.Role.ToString(), IsActive = _person.IsActive };
        _sessions = await sessions.OfAsync(Id, clock.GetUtcNow() - SignIns.Lasts, Http.RequestAborted);
    }

    private async Task ChangeAsync()
    {
        if (!RoleChoice.Reads(Input!.Role, out var role))
        {
            _problem = wording["refusal.unknown-choice"];
        }
        else if (!await accounts.SetRoleAsync(Id, role, Input.IsActive, Http.RequestAborted))
        {
            _problem = wording["people-last-owner", new Number("name", _person!.Name)];
        }
        else
        {
            await NoteChangeAsync(role);
            navigation.NavigateTo("people");
        }
    }

    private async Task NoteChangeAsync(Role role)
    {
        if (role != _person!.Role)
        {
            await Http.NoteAsync(SecurityKind.RoleChanged, Id, $"{RoleNames.Of(_person.Role)} → {RoleNames.Of(role)}");
        }

        if (Input!.IsActive != _person.IsActive)
        {
            await Http.NoteAsync(Input.IsActive ? SecurityKind.TakenBack : SecurityKind.LetGo, Id);
        }
    }

    private async Task EndAsync()
    {
        await sessions.EndAsync(Id, only: null, but: null, clock.GetUtcNow(), Http.RequestAborted);
        await Http.NoteAsync(SecurityKind.SessionsEnded, Id);
        navigation.NavigateTo($"people/{Id}");
    }

    private async Task ResetAsync()
    {
        var password = Passwords.MakeOne();
        await accounts.SetPasswordAsync(Id, passwords.Hash(password), mustChange: true, Http.RequestAborted);
        await sessions.EndAsync(Id, only: null, but: null, clock.GetUtcNow(), Http.RequestAborted);
        await Http.NoteAsync(SecurityKind.PasswordReset, Id);
        (_password, _sessions) = (password, []);
    }

    public sealed class PersonInput
    {
        public string? Role { get; set; }

        public bool IsActive { get; set; }
    }
}
