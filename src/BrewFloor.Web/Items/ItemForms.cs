using BrewFloor.Domain.Items;
using BrewFloor.Domain.Log;
using BrewFloor.Web.Log;

namespace BrewFloor.Web.Items;

/// <summary>What the forms about an item share.</summary>
public abstract class ItemForm : EntryForm
{
    public override SubjectKind About => SubjectKind.Item;

    public override IEnumerable<string> Cautions(FormFloor floor) =>
        floor.Item?.Kind switch
        {
            ItemKind.Part => [],
            ItemKind.Gas => ["caution.co2"],
            ItemKind.Chemical => ["caution.stock-chemical"],
            _ => ["caution.stock-chemical", "caution.co2"], // nobody knows yet what comes
        };

    public override bool IsOffered(FormFloor floor) => floor.Item is { IsNoLongerKept: false };

    protected static Guid ItemId(FormFloor floor, NewItem? brought = null) => brought?.Id ?? floor.Item?.Id ?? default;
}

/// <summary>A form that says how much there is of an item, and may bring the item into being.</summary>
public abstract class ShelvingForm : ItemForm
{
    public override IEnumerable<Field> Fields(FormFloor floor) =>
        [.. NewItemFields.Asked(floor), StockFields.Amount(floor), .. NewItemFields.AskedLast(floor)];

    public override IEnumerable<LogEntry> Read(FormReader said, FormFloor floor)
    {
        var amount = said.Stock("amount");
        var brought = NewItemFields.Read(said, floor, amount);
        return [Entry(ItemId(floor, brought), amount, brought)];
    }

    protected abstract LogEntry Entry(Guid item, StockAmount amount, NewItem? brought);
}

/// <summary>The form of <see cref="ItemReceived"/>.</summary>
public sealed class ItemReceivedForm : ShelvingForm
{
    public override string Kind => "item-received";

    public override int Likelihood(FormFloor floor) => floor.HoldsJob(Domain.Jobs.BuyMore.Rule) ? 90 : 50;

    protected override LogEntry Entry(Guid item, StockAmount amount, NewItem? brought) =>
        new ItemReceived(item, amount) { NewItem = brought };
}

/// <summary>The form of <see cref="ItemCounted"/>.</summary>
public sealed class ItemCountedForm : ShelvingForm
{
    public override string Kind => "item-counted";

    public override int Likelihood(FormFloor floor) => 40;

    protected override LogEntry Entry(Guid item, StockAmount amount, NewItem? brought) =>
        new ItemCounted(item, amount) { NewItem = brought };
}

/// <summary>The form of <see cref="ItemUsed"/>.</summary>
public sealed class ItemUsedForm : ItemForm
{
    public override string Kind => "item-used";

    public override IEnumerable<Field> Fields(FormFloor floor) => [StockFields.Amount(floor), new TextField("what")];

    public override IEnumerable<LogEntry> Read(FormReader said, FormFloor floor) =>
        [new ItemUsed(ItemId(floor), said.Stock("amount")) { What = said.TextOrNone("what") }];

    public override int Likelihood(FormFloor floor) => 70;
}

/// <summary>The form of <see cref="ItemDiscarded"/>.</summary>
public sealed class ItemDiscardedForm : ItemForm
{
    public override string Kind => "item-discarded";

    public override IEnumerable<Field> Fields(FormFloor floor) =>
        [StockFields.Amount(floor), new TextField("why") { IsRequired = true }];

    public override IEnumerable<LogEntry> Read(FormReader said, FormFloor floor) =>
        [new ItemDiscarded(ItemId(floor), said.Stock("amount"), said.RequiredText("why"))];

    public override IEnumerable<string> Cautions(FormFloor floor) =>
        floor.Item?.Kind is ItemKind.Part ? [] : [.. base.Cautions(floor), "caution.disposal"];
}
