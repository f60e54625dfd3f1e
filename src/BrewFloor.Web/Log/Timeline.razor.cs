using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Log;

/// <summary>What happened, the latest first: a ruler of days, with who, when, corrected and struck.</summary>
public sealed partial class Timeline(Wording wording)
{
    [Parameter, EditorRequired]
    public required IReadOnlyList<TimelineLine> Lines { get; set; }

    /// <summary>Lines may be corrected and struck from here.</summary>
    [Parameter]
    public bool CanChange { get; set; }

    private string Whole(TimelineLine line)
    {
        var who = line.TankCode is { } code ? $"{code}. {line.Who}" : line.Who;
        return line switch
        {
            { IsStruck: true } => wording.Entry(
                "line.struck",
                new("who", who),
                new("by", line.ChangedBy),
                new("why", line.ChangedBecause)
            ),
            { IsCorrected: true } => wording.Entry(
                "line.corrected",
                new("who", who),
                new("by", line.ChangedBy),
                new("why", line.ChangedBecause)
            ),
            _ => who,
        };
    }
}
