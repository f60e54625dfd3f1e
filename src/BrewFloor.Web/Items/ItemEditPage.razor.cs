using System.Globalization;
using BrewFloor.Domain.Items;
using BrewFloor.Store.Items;
using BrewFloor.Store.Log;
using BrewFloor.Store.Tanks;
using BrewFloor.Web.Account;
using BrewFloor.Web.Log;
using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Items;

/// <summary>What an item is called, when more is bought and where it is kept. How much is left is in the log.</summary>
public sealed partial class ItemEditPage(
    Wording wording,
    FloorReader reader,
    ItemBook book,
    NavigationManager navigation
)
{
    private Item? _item;
    private IReadOnlyList<Field> _fields = [];

    [Parameter]
    public int Number { get; set; }

    [CascadingParameter]
    public required HttpContext Http { get; set; }

    protected override async Task OnInitializedAsync()
    {
        if (await reader.ItemAsync(Number, Http.RequestAborted) is not { } view)
        {
            navigation.NotFound();
            return;
        }

        _item = view.Floor.Items[0].Thing;
        _fields =
        [
            new TextField("item-name") { IsRequired = true, Start = _item.Name },
            new ChoiceField("item-kind", wording.Choices<ItemKind>())
            {
                IsRequired = true,
                Start = _item.Kind.ToString(),
            },
            new QuantityField("reorder-at", StockFields.MeasureOf(_item.Measure))
            {
                Hint = "hint.reorder-at",
                Start = _item.ReorderAt?.Value.ToString("0.###", CultureInfo.InvariantCulture),
            },
            new TextField("kept-where") { Start = _item.KeptWhere },
            new FlagField("no-longer-kept")
            {
                Hint = "hint.no-longer-kept",
                Start = _item.IsNoLongerKept ? "true" : null,
            },
        ];
    }

    private Func<Task<Edited>> Save(FormReader said, int readAt)
    {
        var item = _item! with
        {
            Version = readAt,
            Name = said.RequiredText("item-name"),
            Kind = said.Choice<ItemKind>("item-kind"),
            ReorderAt = NewItemFields.ReadLevel(said, _item!.Measure),
            KeptWhere = said.TextOrNone("kept-where"),
            IsNoLongerKept = said.Flag("no-longer-kept"),
        };
        return () => book.EditAsync(item, Policies.AuthorOf(Http.User), Http.RequestAborted);
    }
}
