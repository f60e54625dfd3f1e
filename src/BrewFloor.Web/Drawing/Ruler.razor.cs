using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Drawing;

/// <summary>The scale a number stands on: what was expected, what is allowed, and where yours is.</summary>
public sealed partial class Ruler
{
    /// <summary>The left end.</summary>
    [Parameter, EditorRequired]
    public double From { get; set; }

    /// <summary>The right end.</summary>
    [Parameter, EditorRequired]
    public double To { get; set; }

    /// <summary>Between two short ticks.</summary>
    [Parameter, EditorRequired]
    public double Step { get; set; }

    /// <summary>Long ticks with their figures.</summary>
    [Parameter]
    public IReadOnlyList<RulerPlace> Numbers { get; set; } = [];

    /// <summary>Further places worth a word: the last reading, the end.</summary>
    [Parameter]
    public IReadOnlyList<RulerPlace> Names { get; set; } = [];

    /// <summary>What was expected: a band.</summary>
    [Parameter]
    public RulerStretch? Expected { get; set; }

    /// <summary>What is allowed; hatched on the side where it is not.</summary>
    [Parameter]
    public RulerPlace? Limit { get; set; }

    /// <summary>The limit is the least that is allowed, not the most.</summary>
    [Parameter]
    public bool IsLeast { get; set; }

    /// <summary>What has passed, as on the ruler of a timer: a bar.</summary>
    [Parameter]
    public RulerStretch? Gone { get; set; }

    /// <summary>The pointer.</summary>
    [Parameter]
    public RulerPlace? Yours { get; set; }

    /// <summary>The small ruler of a row.</summary>
    [Parameter]
    public bool IsSlim { get; set; }

    /// <summary>What the ruler says, in one sentence, where no words beside it say the same. Left out: decoration.</summary>
    [Parameter]
    public string? Sentence { get; set; }

    private string Look => IsSlim ? "ruler slim" : "ruler";

    private RulerScale Scale => new(From, To);

    private RulerStretch? Beyond =>
        Limit is not { } limit ? null
        : IsLeast ? new RulerStretch(From, limit.Value)
        : new RulerStretch(limit.Value, To);
}
