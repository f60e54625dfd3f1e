using System.Globalization;
using BrewFloor.Brewing;
using BrewFloor.Store.House;
using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.House;

/// <summary>What the place is called, by which clock it lives, and how high it lies.</summary>
public sealed partial class SitePage(Wording wording, HouseKeeping house)
{
    private string? _problem;
    private bool _isKept;

    // What somebody else made of it meanwhile.
    private Site? _now;

    [SupplyParameterFromForm(FormName = "site")]
    private SiteInput? Input { get; set; }

    [CascadingParameter]
    public required HttpContext Http { get; set; }

    protected override async Task OnInitializedAsync()
    {
        if (Input is null)
        {
            Input = new(); // rendered once while the house is asked
            Show(await house.SiteAsync(Http.RequestAborted));
        }
    }

    private async Task SaveAsync()
    {
        var name = Input!.Name?.Trim();
        _problem = name is null or "" ? "name-missing" : PlaceProblem.With(Input.Zone, Input.Altitude);
        if (_problem is not null)
        {
            Http.Response.StatusCode = StatusCodes.Status422UnprocessableEntity;
            return;
        }

        var before = await house.SiteAsync(Http.RequestAborted);
        var site = before with
        {
            Name = name!,
            Zone = Input.Zone!,
            AltitudeM = TypedNumber.Parse(Input.Altitude).Value,
            Version = Input.Version,
        };
        _isKept = await house.ChangeAsync(site, Http.RequestAborted);
        var stands = await house.SiteAsync(Http.RequestAborted);
        if (_isKept)
        {
            Show(stands);
            return;
        }

        Http.Response.StatusCode = StatusCodes.Status409Conflict;
        (_now, Input.Version) = (stands, stands.Version); // kept again, theirs was seen
    }

    private void Show(Site site) =>
        Input = new()
        {
            Name = site.Name,
            Zone = site.Zone,
            Altitude = site.AltitudeM.ToString(CultureInfo.InvariantCulture),
            Version = site.Version,
        };

    public sealed class SiteInput
    {
        public string? Name { get; set; }

        public string? Zone { get; set; }

        public string? Altitude { get; set; }

        public int Version { get; set; }
    }
}
