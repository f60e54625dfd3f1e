using BrewFloor.Brewing;
using BrewFloor.Domain;
using BrewFloor.Domain.Items;
using BrewFloor.Web.Log;

namespace BrewFloor.Web.Items;

/// <summary>How much of an item: on its own forms, and as what other work took from the stock.</summary>
public static class StockFields
{
    private const int Rows = 3;

    /// <summary>The amount of one item; the units are those it is counted in, all of them while it is new.</summary>
    public static QuantityField Amount(FormFloor floor) =>
        new("amount", floor.Item is { } item ? MeasureOf(item.Measure) : Measure.Stock) { IsBig = true };

    /// <summary>"Taken from stock" on the form of other work; nothing, where nothing is kept.</summary>
    public static IEnumerable<Field> Taken(FormFloor floor)
    {
        if (floor.Items.Count > 0)
        {
            Field[] row =
            [
                new ChoiceField("item", Choices(floor)) { IsList = true },
                new QuantityField("amount", Measure.Stock),
            ];
            yield return new RowsField("used", row, Rows) { IsExtra = true };
        }
    }

    public static Listed<Used> ReadTaken(FormReader said, FormFloor floor)
    {
        List<Used> used = [];
        for (var row = 0; row < Rows; row++)
        {
            var name = $"used.{row}.amount";
            if (said.IdOrNone($"used.{row}.item") is { } item)
            {
                used.Add(new(item, said.Stock(name)));
            }
            else if (said.StockOrNone(name) is not null)
            {
                said.Refuse($"used.{row}.item", new Refusal("missing", "item", "", ""));
            }
        }

        return [.. used];
    }

    public static Measure MeasureOf(StockMeasure measure) =>
        measure switch
        {
            StockMeasure.Pieces => Measure.Pieces,
            StockMeasure.Mass => Measure.Mass,
            _ => Measure.SmallVolume,
        };

    private static IReadOnlyList<(string Value, string Text)> Choices(FormFloor floor) =>
        [.. floor.Items.Select(item => (item.Thing.Id.ToString(), ItemWords.Choice(item, floor.Words)))];
}
