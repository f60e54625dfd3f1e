using BrewFloor.Store.People;
using BrewFloor.Web.Shell;
using BrewFloor.Web.Units;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Account;

/// <summary>The reader's own language and units. Stored values never change with them.</summary>
public sealed partial class MePage(Wording wording, Accounts accounts, SignIns signIns, NavigationManager navigation)
{
    [SupplyParameterFromForm(FormName = "units")]
    private UnitsInput? Input { get; set; }

    [CascadingParameter]
    public required HttpContext Http { get; set; }

    protected override void OnInitialized() =>
        Input ??= new()
        {
            Units = wording.Figures.Units.ToString(),
            Language = Http.User.FindFirst(Policies.LanguageClaim)?.Value,
        };

    private async Task SaveAsync()
    {
        var id = Policies.IdOf(Http.User);
        var chosen = Preferences.Text(ReadingUnits.Parse(Input!.Units), Languages.Of(Input.Language));
        await accounts.SetPreferencesAsync(id, chosen, Http.RequestAborted);
        if (await accounts.ByIdAsync(id, Http.RequestAborted) is { } account)
        {
            await signIns.SignInAsync(Http, account);
        }

        navigation.NavigateTo("more");
    }

    public sealed class UnitsInput
    {
        public string? Units { get; set; }

        public string? Language { get; set; }
    }
}
