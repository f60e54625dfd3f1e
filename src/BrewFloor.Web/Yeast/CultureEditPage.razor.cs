using System.Globalization;
using BrewFloor.Brewing;
using BrewFloor.Domain.Yeast;
using BrewFloor.Store.Log;
using BrewFloor.Store.Tanks;
using BrewFloor.Store.Yeast;
using BrewFloor.Web.Account;
using BrewFloor.Web.Log;
using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Yeast;

/// <summary>What a culture is called and what its pack says. How much is left and where it comes from is in the log.</summary>
public sealed partial class CultureEditPage(
    Wording wording,
    FloorReader reader,
    CultureBook book,
    NavigationManager navigation
)
{
    private Culture? _culture;
    private IReadOnlyList<Field> _fields = [];

    [Parameter]
    public int Number { get; set; }

    [CascadingParameter]
    public required HttpContext Http { get; set; }

    protected override async Task OnInitializedAsync()
    {
        var all = await reader.CulturesAsync(Http.RequestAborted);
        _culture = all.Floor.Cultures.FirstOrDefault(culture => culture.Thing.Number == Number).Thing;
        if (_culture is null)
        {
            navigation.NotFound();
            return;
        }

        _fields =
        [
            new TextField("strain") { IsRequired = true, Start = _culture.Strain },
            new ChoiceField("kind", wording.Choices<CultureKind>())
            {
                IsRequired = true,
                Start = _culture.Kind.ToString(),
            },
            new DayField("use-by") { Start = _culture.UseBy?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) },
            new TextField("generation-limit")
            {
                IsNumber = true,
                Hint = "hint.generation-limit",
                Start = _culture.GenerationLimit?.ToString(CultureInfo.InvariantCulture),
            },
        ];
    }

    private Func<Task<Edited>> Save(FormReader said, int readAt)
    {
        var culture = _culture! with
        {
            Version = readAt,
            Strain = said.RequiredText("strain"),
            Kind = said.Choice<CultureKind>("kind"),
            UseBy = said.DayOrNone("use-by"),
            GenerationLimit = ReadLimit(said),
        };
        return () => book.EditAsync(culture, Policies.AuthorOf(Http.User), Http.RequestAborted);
    }

    private static int? ReadLimit(FormReader said)
    {
        var limit = said.WholeOrNone("generation-limit");
        if (limit is < 1 or > 50)
        {
            said.Refuse("generation-limit", new Refusal("out-of-range", "generation-limit", "1", "50"));
        }

        return limit;
    }
}
