using BrewFloor.Brewing;
using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.Primitives;

namespace BrewFloor.Web.Log;

/// <summary>The kind's own fields first; when, note and who stand below them on every form.</summary>
public sealed partial class EntryFields(Wording wording, TimeProvider clock)
{
    [Parameter, EditorRequired]
    public required IReadOnlyList<Field> Fields { get; set; }

    [Parameter]
    public IReadOnlyDictionary<string, StringValues>? Posted { get; set; }

    [Parameter, EditorRequired]
    public required IReadOnlyDictionary<string, Refusal> Problems { get; set; }

    [Parameter, EditorRequired]
    public required IReadOnlyList<(Guid Id, string Name)> People { get; set; }

    // Left as it was shown, it means now: by the database's clock, not this page's.
    private Field When =>
        new MomentField("when")
        {
            Start = new SiteTimes(wording.Figures.Zone, clock.GetUtcNow(), wording.Figures.Culture).Typed(
                clock.GetUtcNow()
            ),
        };

    private Refusal? NoteProblem => Problems.GetValueOrDefault("note");

    private bool IsWrong(Field field) =>
        Problems.ContainsKey(field.Name)
        || (field is RowsField rows && rows.Rows.Any(row => row.Any(one => Problems.ContainsKey(one.Name))));

    private string? Text(string name) => Posted?.GetValueOrDefault(name).ToString();

    private bool IsTicked(Guid id) =>
        Posted is not null && Posted.GetValueOrDefault("done-by").Contains(id.ToString(), StringComparer.Ordinal);
}
