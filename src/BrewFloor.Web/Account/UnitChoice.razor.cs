using BrewFloor.Web.Shell;
using BrewFloor.Web.Units;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Account;

/// <summary>The usual sets of units, one press each.</summary>
public sealed partial class UnitChoice(Wording wording)
{
    private static readonly (string Value, string Key)[] Offers =
    [
        (ReadingUnits.Metric.ToString(), "units-metric"),
        ((ReadingUnits.Metric with { Gravity = GravityUnit.Plato }).ToString(), "units-plato"),
        (ReadingUnits.UsCustomary.ToString(), "units-us"),
    ];

    [Parameter]
    public string? Chosen { get; set; }
}
