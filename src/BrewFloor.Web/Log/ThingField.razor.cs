using BrewFloor.Brewing;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.Primitives;

namespace BrewFloor.Web.Log;

/// <summary>A field of a form by which a thing is edited: it remembers what it opened with, for when somebody else is faster.</summary>
public sealed partial class ThingField
{
    [Parameter, EditorRequired]
    public required Field Field { get; set; }

    [Parameter]
    public IReadOnlyDictionary<string, StringValues>? Posted { get; set; }

    [Parameter]
    public IReadOnlyDictionary<string, Refusal>? Problems { get; set; }

    /// <summary>What somebody else made of fields meanwhile, where that is something else.</summary>
    [Parameter]
    public IReadOnlyDictionary<string, string>? Theirs { get; set; }

    private string? Was(Field one) =>
        Posted is not null && Posted.TryGetValue(BothValues.WasOf(one), out var was) ? was.ToString() : one.Start;
}
