using BrewFloor.Brewing;
using BrewFloor.Domain.Items;
using BrewFloor.Web.Log;

namespace BrewFloor.Web.Items;

/// <summary>The fields by which an entry brings an item into being; of one that is there already, none.</summary>
public static class NewItemFields
{
    public static IEnumerable<Field> Asked(FormFloor floor) =>
        floor.Item is null && floor.Corrected is null
            ?
            [
                new TextField("item-name") { IsRequired = true },
                new ChoiceField("item-kind", floor.Choices<ItemKind>()) { IsRequired = true },
            ]
            : [];

    /// <summary>Asked last: when to buy more and where it is kept.</summary>
    public static IEnumerable<Field> AskedLast(FormFloor floor) =>
        floor.Item is null && floor.Corrected is null
            ? [new QuantityField("reorder-at", Measure.Stock) { Hint = "hint.reorder-at" }, new TextField("kept-where")]
            : [];

    /// <summary>What it is counted in is what its amount was said in.</summary>
    /// <returns>Null: it is there already.</returns>
    public static NewItem? Read(FormReader said, FormFloor floor, StockAmount amount) =>
        floor.Corrected switch
        {
            ItemReceived old => old.NewItem,
            ItemCounted old => old.NewItem,
            _ when floor.Item is not null => null,
            _ => new(
                said.Id("new.0"),
                said.RequiredText("item-name"),
                said.Choice<ItemKind>("item-kind"),
                amount.Measure
            )
            {
                ReorderAt = ReadLevel(said, amount.Measure),
                KeptWhere = said.TextOrNone("kept-where"),
            },
        };

    /// <summary>More is bought at this level; it must be of the item's own measure.</summary>
    public static StockAmount? ReadLevel(FormReader said, StockMeasure measure)
    {
        var level = said.StockOrNone("reorder-at");
        if (level is { } other && other.Measure != measure)
        {
            said.Refuse("reorder-at", new Refusal("other-measure", "reorder-at", "", ""));
        }

        return level;
    }
}
