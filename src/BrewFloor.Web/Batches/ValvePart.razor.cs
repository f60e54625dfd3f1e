using BrewFloor.Brewing;
using BrewFloor.Brewing.Extract;
using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Log;
using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Batches;

/// <summary>When to close a batch in so that it makes its own gas, and what the valve is set to.</summary>
public sealed partial class ValvePart(Wording wording)
{
    /// <summary>Null: it isn't in one tank, so there is nothing to close.</summary>
    [Parameter, EditorRequired]
    public Outcome<ValvePlan>? Of { get; set; }

    [Parameter, EditorRequired]
    public Moment? ShutIn { get; set; }

    [Parameter, EditorRequired]
    public DateTimeOffset Now { get; set; }

    private ValvePlan? Plan => Of is { IsDone: true } found ? found.Value : null;

    private (string Likely, string Between)? When =>
        Plan is { Forecast: { } forecast } plan
            ? ForecastWords.Reached(forecast, new DegreesPlato(Strength.Plato(plan.CloseAt)), Now, wording)
            : null;
}
