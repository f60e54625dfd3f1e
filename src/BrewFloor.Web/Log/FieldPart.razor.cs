using BrewFloor.Brewing;
using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.Primitives;

namespace BrewFloor.Web.Log;

/// <summary>One field of a form: label, input, unit, and below it what is wrong with it.</summary>
public sealed partial class FieldPart(Wording wording)
{
    [Parameter, EditorRequired]
    public required Field Field { get; set; }

    /// <summary>What was posted; null when the form is fresh.</summary>
    [Parameter]
    public IReadOnlyDictionary<string, StringValues>? Posted { get; set; }

    [Parameter]
    public IReadOnlyDictionary<string, Refusal>? Problems { get; set; }

    private string Id => "f-" + Field.Name.Replace('.', '-');

    private string Label => wording.Entry(Field.Label);

    private string? Value =>
        Posted is null ? Field.Start
        : Posted.TryGetValue(Field.Name, out var value) ? value.ToString()
        : null;

    // What the form opened with: a time left as it was shown means "now", by the database's clock.
    private string? Shown =>
        Posted is not null && Posted.TryGetValue(Field.Name + ".shown", out var shown) ? shown.ToString() : Field.Start;

    private Refusal? Problem => Problems?.GetValueOrDefault(Field.Name);

    private string? Invalid => Problem is null ? null : "true";

    private string? Described => Problem is null && Field.Hint is null ? null : Id + "-note";

    private bool IsTicked(string value) => Value?.Split(',').Contains(value, StringComparer.Ordinal) is true;

    // Where some are ticked, most often nothing else is looked for.
    private (string Value, string Text)[] InSight(TicksField ticks) => [.. ticks.Options.Except(OutOfSight(ticks))];

    private (string Value, string Text)[] OutOfSight(TicksField ticks) =>
        ticks.Options.Any(option => IsTicked(option.Value))
            ? [.. ticks.Options.Where(option => !IsTicked(option.Value))]
            : [];

    private string? ListId => Field is TextField { Suggestions.Count: > 0 } ? Id + "-offers" : null;
}
