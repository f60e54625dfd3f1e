using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Items;
using BrewFloor.EndToEnd.Tests.House;
using BrewFloor.Web.Log;

namespace BrewFloor.EndToEnd.Tests.Log;

/// <summary>Every kind of form, opened on a phone in a fitting state of the floor and sent: it lands in the timeline.</summary>
public sealed class EveryFormTests(FloorApp floor) : IClassFixture<FloorApp>
{
    // Work with caustic, acid, pressure, CO2 or heat, or at an opening.
    private static readonly string[] CanHurt =
    [
        "aired",
        "rinsed",
        "washed",
        "cleaned",
        "inspected",
        "sanitized",
        "drained",
        "passivated",
        "opened",
        "closed",
        "vented",
        "purged",
        "filled",
        "topped-up",
        "racked",
        "packaged",
        "discarded",
        "dumped",
        "dry-hopped",
        "pressure-set",
        "temperature-set",
        "parts-off",
        "refitted",
        "leak-tested",
        "gasket-changed",
        "cleared",
        "relief-valve-tested",
        "pressure-tested",
        "harvested",
    ];

    private static readonly string[] OnEveryForm = ["when", "when.shown", "note", "done-by", .. FormIds.Names];

    public static TheoryData<string> Kinds => [.. EntryForms.ByKind.Keys.Order(StringComparer.Ordinal)];

    [Fact]
    public void Every_form_has_its_case() => Assert.Empty(EntryForms.ByKind.Keys.Except(FormCases.ByKind.Keys));

    [Theory]
    [MemberData(nameof(Kinds))]
    public async Task A_form_is_filled_in_and_stands_in_the_timeline(string kind)
    {
        var one = FormCases.ByKind[kind];
        var path = await PlaceAsync(one, kind);
        await using var bert = await floor.VisitAsync(FloorApp.Brewer, Screen.Phone);
        await bert.OpenAsync(path);
        await ShowsItsOwnFieldsOnlyAsync(bert, kind, path);
        if (CanHurt.Contains(kind))
        {
            await ShowsCautionsFirstAsync(bert);
        }

        await bert.ShotIfWantedAsync($"form-{kind}");
        await Violations.NoneAsync(bert);
        await one.Fill(bert);
        await bert.InsistAsync(Verb(kind));
        await bert.ShotIfWantedAsync($"form-{kind}-logged");
        await bert.SeesAsync(one.Shows ?? Happened(kind));
        await bert.SeesAsync("On the server");
    }

    private async Task<string> PlaceAsync(FormCase one, string kind)
    {
        if (one.BringsCulture)
        {
            return $"/yeast/log/{kind}";
        }

        if (one.IsAboutCulture)
        {
            var id = Guid.CreateVersion7();
            await floor.LogAsync(SomeEntries.Received(id));
            var cultures = await floor.Reader.CulturesAsync(TestContext.Current.CancellationToken);
            return $"/yeast/{cultures.Floor.Cultures.Single(c => c.Thing.Id == id).Thing.Number}/log/{kind}";
        }

        if (one.IsAboutItem)
        {
            var counted = SomeEntries.OnTheShelf($"Gasket {kind}", ItemKind.Part, StockAmount.Of(9));
            await floor.LogAsync(counted);
            var items = await floor.Reader.ItemsAsync(TestContext.Current.CancellationToken);
            return $"/items/{items.Floor.Item(counted.ItemId).Thing.Number}/log/{kind}";
        }

        var tank = await floor.AddTankAsync(one.Make);
        await floor.LogAsync(one.Before(tank));
        if (kind is "racked")
        {
            var target = await floor.AddTankAsync(SomeTanks.Bright, "B9");
            await floor.LogAsync(SomeEntries.Found(target, Soil.Sanitized, 1));
        }

        return $"/tanks/{tank.Code}/log/{kind}";
    }

    private async Task ShowsItsOwnFieldsOnlyAsync(Visit bert, string kind, string path)
    {
        var parts = path.Split('/');
        await using var scope = floor.Services.CreateAsyncScope();
        var loaded = await scope
            .ServiceProvider.GetRequiredService<FormFloors>()
            .LoadAsync(
                new(
                    parts[1] is "tanks" ? parts[2] : null,
                    BatchNumber: null,
                    parts[1] is "yeast"
                    && int.TryParse(parts[2], System.Globalization.CultureInfo.InvariantCulture, out var number)
                        ? number
                        : null
                )
                {
                    ItemNumber = parts[1] is "items"
                        ? int.Parse(parts[2], System.Globalization.CultureInfo.InvariantCulture)
                        : null,
                },
                TestContext.Current.CancellationToken
            );
        var own = EntryForms.ByKind[kind].Fields(loaded!).SelectMany(NamesOf);
        var shown = await bert
            .Main.Locator("form [name]")
            .EvaluateAllAsync<string[]>("all => all.map(one => one.name).filter(name => !name.startsWith('_'))");
        Assert.Equal(
            own.Order(StringComparer.Ordinal),
            shown
                .Distinct()
                .Where(name => !name.EndsWith(".unit", StringComparison.Ordinal))
                .Except(OnEveryForm)
                .Order(StringComparer.Ordinal)
        );
    }

    private static IEnumerable<string> NamesOf(Field field) =>
        field switch
        {
            RowsField rows => rows.Rows.SelectMany(row => row).Select(one => one.Name),
            MomentField moment => [moment.Name, moment.Name + ".shown"],
            _ => [field.Name],
        };

    private static async Task ShowsCautionsFirstAsync(Visit bert) =>
        Assert.True(
            await bert.Page.EvaluateAsync<bool>(
                """
                () => {
                  const stripe = document.querySelector('main .hazard');
                  const first = document.querySelector('main form :is(input:not([type=hidden]), select, textarea, button)');
                  return !!stripe && !!(stripe.compareDocumentPosition(first) & Node.DOCUMENT_POSITION_FOLLOWING);
                }
                """
            ),
            "No caution stands above the first field."
        );

    private static string Verb(string kind) => BrewFloor.Web.Shell.Reader.Stranger.Verb(kind);

    private static string Happened(string kind) => BrewFloor.Web.Shell.Reader.Stranger.Happened(kind);
}
