using BrewFloor.Domain.Log;
using BrewFloor.Store.Jobs;
using BrewFloor.Web.Account;
using BrewFloor.Web.Log;
using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Jobs;

/// <summary>A job put off until a moment, with a reason that stands beside it.</summary>
public sealed partial class PutOffPage(
    Wording wording,
    ShownJobs jobs,
    JobKeeper keeper,
    TimeProvider clock,
    NavigationManager navigation
)
{
    // Longer is no putting off: the house rule is wrong, or the thing is retired.
    private const int LongestDays = 90;

    private ShownJob? _job;
    private string? _problem;
    private bool _isWhyMissing;

    [Parameter]
    public Guid Id { get; set; }

    [SupplyParameterFromForm(FormName = "put-off")]
    private PutOffInput? Input { get; set; }

    [CascadingParameter]
    public required HttpContext Http { get; set; }

    private SiteTimes Times => new(wording.Figures.Zone, clock.GetUtcNow(), wording.Figures.Culture);

    protected override async Task OnInitializedAsync()
    {
        Input ??= new() { Until = Times.Typed(clock.GetUtcNow().AddDays(1)) };
        _job = await jobs.OneAsync(Id, Http.RequestAborted);
        if (_job is null)
        {
            navigation.NotFound();
        }
    }

    private async Task SaveAsync()
    {
        var until = Times.Parse(Input!.Until ?? "");
        if (!until.Gives(out var at))
        {
            _problem = wording.Say(until.Refusal!);
            return;
        }

        if (at <= clock.GetUtcNow())
        {
            _problem = wording["job-until-past"];
            return;
        }

        if (at > clock.GetUtcNow().AddDays(LongestDays))
        {
            _problem = wording["job-until-far", new Number("days", LongestDays)];
            return;
        }

        if (string.IsNullOrWhiteSpace(Input.Why))
        {
            _isWhyMissing = true;
            return;
        }

        await keeper.PutOffAsync(Id, at, Input.Why.Trim(), Policies.IdOf(Http.User), Http.RequestAborted);
        navigation.NavigateTo("jobs");
    }

    public sealed class PutOffInput
    {
        public string? Until { get; set; }

        public string? Why { get; set; }
    }
}
