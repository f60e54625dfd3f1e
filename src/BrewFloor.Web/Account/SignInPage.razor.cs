using BrewFloor.Web.Hosting;
using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Account;

/// <summary>By name and password; leads back to the page that was asked for.</summary>
public sealed partial class SignInPage(
    Wording wording,
    SignIns signIns,
    NavigationManager navigation,
    TimeProvider clock
)
{
    private string? _problem;

    [SupplyParameterFromForm(FormName = "sign-in")]
    private SignInInput? Input { get; set; }

    [SupplyParameterFromQuery]
    private string? ReturnUrl { get; set; }

    [SupplyParameterFromQuery]
    private string? Passkey { get; set; }

    [CascadingParameter]
    public required HttpContext Http { get; set; }

    private string Back => LocalPaths.Safe(ReturnUrl, Http);

    protected override void OnInitialized() => Input ??= new();

    private async Task SignInAsync()
    {
        if (PlainHttp.IsRefused(Http))
        {
            Http.Response.StatusCode = StatusCodes.Status403Forbidden; // the page says why
            return;
        }

        var tried = await signIns.TryAsync(
            Input!.Name ?? "",
            Input.Password ?? "",
            Guessing.Place(Http.Connection.RemoteIpAddress),
            Http.RequestAborted
        );
        switch (tried)
        {
            case SignInTry.Welcome(var account):
                await signIns.SignInAsync(Http, account);
                navigation.NavigateTo(account.MustChangePassword ? "me/password" : Back);
                break;
            case SignInTry.Locked(var until):
                _problem = wording["sign-in-locked", new Domain.Log.Number("until", until)];
                Refuse(until - clock.GetUtcNow());
                break;
            case SignInTry.TooFast(var wait):
                _problem = wording["sign-in-wait", new Domain.Log.Number("seconds", Math.Ceiling(wait.TotalSeconds))];
                Refuse(wait);
                break;
            case SignInTry.Wrong wrong:
                _problem = wording["sign-in-wrong"];
                await Http.NoteWrongAsync(wrong);
                break;
        }
    }

    private void Refuse(TimeSpan wait)
    {
        Http.Response.StatusCode = StatusCodes.Status429TooManyRequests;
        Paces.SayWhen(Http.Response, wait);
    }

    public sealed class SignInInput
    {
        public string? Name { get; set; }

        public string? Password { get; set; }
    }
}
