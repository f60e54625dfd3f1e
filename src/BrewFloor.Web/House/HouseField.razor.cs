using BrewFloor.Brewing;
using BrewFloor.Domain.House;
using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.House;

/// <summary>One number of the house: what it is now, what it means, how far it goes, and where it comes from.</summary>
public sealed partial class HouseField(Wording wording)
{
    private static readonly HouseRules Beginning = HouseRules.Defaults(TimeZoneInfo.Utc);

    [Parameter, EditorRequired]
    public required HouseNumber Number { get; set; }

    [Parameter]
    public string? Typed { get; set; }

    /// <summary>What somebody else made of it meanwhile, where that is something else.</summary>
    [Parameter]
    public string? Theirs { get; set; }

    [Parameter]
    public Refusal? Problem { get; set; }

    [Parameter]
    public bool IsFixed { get; set; }

    /// <summary>It comes from elsewhere than most beside it.</summary>
    [Parameter]
    public bool IsOdd { get; set; }

    private string Unit => wording["house-in-" + Number.Unit];

    private string Lowest => HouseNumber.Shown(Number.Least);

    private string Highest => HouseNumber.Shown(Number.Most);

    private string Start => Number.Text(Beginning);

    // Another number is named by its words, not by its key.
    private string Sentence =>
        wording.Say(
            Problem is { Code: "house-order" } order
                ? order with
                {
                    What = wording["house-name-" + order.What],
                }
                : Problem!
        );
}
