using System.Globalization;
using BrewFloor.Brewing;
using BrewFloor.Store.Tanks;
using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.Primitives;

namespace BrewFloor.Web.Log;

/// <summary>The form by which a batch or a culture is edited: what it is, not what happened to it.</summary>
public sealed partial class ThingForm(Wording wording, TimeProvider clock, NavigationManager navigation)
{
    private IReadOnlyDictionary<string, Refusal> _problems = new Dictionary<string, Refusal>(StringComparer.Ordinal);

    // Somebody else was faster.
    private BothValues? _both;

    [Parameter, EditorRequired]
    public required IReadOnlyList<Field> Fields { get; set; }

    /// <summary>Of the thing as it stands.</summary>
    [Parameter, EditorRequired]
    public required int Version { get; set; }

    /// <summary>Stores what was said of the version that was on the page; what cannot be read is refused in the reader itself.</summary>
    [Parameter, EditorRequired]
    public required Func<FormReader, int, Func<Task<Edited>>> Save { get; set; }

    /// <summary>Where to go once it is stored.</summary>
    [Parameter, EditorRequired]
    public required string Next { get; set; }

    [CascadingParameter]
    public required HttpContext Http { get; set; }

    private IReadOnlyDictionary<string, StringValues>? Posted =>
        _both?.Posted
        ?? (HttpMethods.IsPost(Http.Request.Method) ? Http.Request.Form.ToDictionary(StringComparer.Ordinal) : null);

    private string ReadAt =>
        (_both is null ? Posted : null)?.GetValueOrDefault("version").ToString()
        ?? Version.ToString(CultureInfo.InvariantCulture);

    private async Task SaveAsync()
    {
        var said = new FormReader(
            Posted!,
            new SiteTimes(wording.Figures.Zone, clock.GetUtcNow(), wording.Figures.Culture)
        );
        var readAt = int.TryParse(ReadAt, NumberStyles.None, CultureInfo.InvariantCulture, out var read) ? read : 0;
        var store = Save(said, readAt);
        if (!said.IsFine)
        {
            _problems = said.Problems;
            return;
        }

        if (await store() is Edited.Done)
        {
            navigation.NavigateTo(Next);
            return;
        }

        Http.Response.StatusCode = StatusCodes.Status409Conflict;
        _both = BothValues.Of(Posted!, Fields, wording); // kept again, theirs was seen
    }
}
