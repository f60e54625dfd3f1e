using BrewFloor.Store.People;
using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Account;

/// <summary>A new password; everything else signed in under the old one is signed out.</summary>
public sealed partial class PasswordPage(
    Wording wording,
    Accounts accounts,
    Passwords passwords,
    SignIns signIns,
    NavigationManager navigation
)
{
    private string? _problem;

    [SupplyParameterFromForm(FormName = "password")]
    private PasswordInput? Input { get; set; }

    [CascadingParameter]
    public required HttpContext Http { get; set; }

    protected override void OnInitialized() => Input ??= new();

    private async Task ChangeAsync()
    {
        var id = Policies.IdOf(Http.User);
        var account = await accounts.ByIdAsync(id, Http.RequestAborted);
        _problem = !passwords.Fits(account?.PasswordHash, Input!.Old ?? "")
            ? "sign-in-wrong"
            : PasswordProblem.With(Input.New, account?.Name);
        if (_problem is not null)
        {
            return;
        }

        await accounts.SetPasswordAsync(id, passwords.Hash(Input.New!), mustChange: false, Http.RequestAborted);
        await Http.NoteAsync(SecurityKind.PasswordChanged);
        if (await accounts.ByIdAsync(id, Http.RequestAborted) is { } changed)
        {
            await signIns.SignInAnewAsync(Http, changed);
        }

        navigation.NavigateTo("");
    }

    public sealed class PasswordInput
    {
        public string? Old { get; set; }

        public string? New { get; set; }
    }
}
