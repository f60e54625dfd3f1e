using BrewFloor.Brewing;
using BrewFloor.Store.House;
using BrewFloor.Store.People;
using BrewFloor.Web.House;
using BrewFloor.Web.Shell;
using BrewFloor.Web.Units;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Account;

/// <summary>Makes the first owner of a floor: whoever can read the console.</summary>
public sealed partial class SetupPage(
    Wording wording,
    FirstOwner first,
    Passwords passwords,
    SignIns signIns,
    SetupToken token,
    NavigationManager navigation
)
{
    private string? _problem;
    private bool _isDone;

    [SupplyParameterFromForm(FormName = "setup")]
    private SetupInput? Input { get; set; }

    [CascadingParameter]
    public required HttpContext Http { get; set; }

    protected override async Task OnInitializedAsync()
    {
        Input ??= new()
        {
            Zone = TimeZoneInfo.Local.Id,
            Altitude = "0",
            Units = ReadingUnits.Metric.ToString(),
        };
        // A form that was sent is answered even so: without it on the page there would be nobody to tell it.
        _isDone = HttpMethods.IsGet(Http.Request.Method) && await first.ExistsAsync(Http.RequestAborted);
    }

    private async Task ClaimAsync()
    {
        if (await first.ExistsAsync(Http.RequestAborted))
        {
            _isDone = true; // before a password is hashed for nothing
            return;
        }

        _problem = ProblemWith(Input!);
        if (_problem is not null)
        {
            return;
        }

        var site = new Site(Input!.Site!.Trim(), Input.Zone!, TypedNumber.Parse(Input.Altitude).Value, Version: 0);
        var owner = await first.ClaimAsync(
            Input.Name!,
            passwords.Hash(Input.Password!),
            Preferences.Text(ReadingUnits.Parse(Input.Units)),
            site,
            Http.RequestAborted
        );
        if (owner is null)
        {
            _isDone = true;
            return;
        }

        await Http.NoteByAsync(owner.Id, SecurityKind.OwnerMade);
        await signIns.SignInAsync(Http, owner);
        navigation.NavigateTo("");
    }

    private string? ProblemWith(SetupInput input) =>
        !token.Is(input.Token) ? "setup-wrong"
        : string.IsNullOrWhiteSpace(input.Name) || string.IsNullOrWhiteSpace(input.Site) ? "name-missing"
        : PasswordProblem.With(input.Password, input.Name, input.Site) ?? PlaceProblem.With(input.Zone, input.Altitude);

    public sealed class SetupInput
    {
        public string? Token { get; set; }

        public string? Name { get; set; }

        public string? Password { get; set; }

        public string? Site { get; set; }

        public string? Zone { get; set; }

        public string? Altitude { get; set; }

        public string? Units { get; set; }
    }
}
