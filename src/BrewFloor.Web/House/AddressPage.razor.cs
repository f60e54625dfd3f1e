using BrewFloor.Brewing;
using BrewFloor.Store.House;
using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.House;

/// <summary>The owner says where browsers open this floor: what is printed on labels leads there for years.</summary>
public sealed partial class AddressPage(Wording wording, HouseKeeping house, NavigationManager navigation)
{
    private Refusal? _problem;
    private bool _isOvertaken;

    [SupplyParameterFromForm(FormName = "address")]
    private AddressInput? Input { get; set; }

    [CascadingParameter]
    public required HttpContext Http { get; set; }

    protected override async Task OnInitializedAsync()
    {
        if (Input is not null)
        {
            return;
        }

        Input = new(); // rendered once while the house is asked
        var site = await house.SiteAsync(Http.RequestAborted);
        (Input.Address, Input.Version) = (site.Address ?? navigation.BaseUri.TrimEnd('/'), site.Version);
    }

    private async Task SaveAsync()
    {
        var typed = SiteAddress.Parse(Input!.Address);
        if (!typed.Gives(out var address))
        {
            _problem = typed.Refusal;
            Http.Response.StatusCode = StatusCodes.Status422UnprocessableEntity;
            return;
        }

        var site = await house.SiteAsync(Http.RequestAborted);
        if (await house.ChangeAsync(site with { Address = address, Version = Input.Version }, Http.RequestAborted))
        {
            navigation.NavigateTo("labels");
            return;
        }

        Http.Response.StatusCode = StatusCodes.Status409Conflict;
        _isOvertaken = true;
    }

    public sealed class AddressInput
    {
        public string? Address { get; set; }

        public int Version { get; set; }
    }
}
