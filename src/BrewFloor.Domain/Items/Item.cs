namespace BrewFloor.Domain.Items;

public enum ItemKind
{
    Chemical,
    Part, // gaskets, clamps, reducers, disconnects
    Gas,
}

/// <summary>Something kept in stock: a chemical, a part, a gas.</summary>
/// <param name="Number">Given by the store, one after the other.</param>
/// <param name="Measure">What it is counted in; fixed once anything was logged about it.</param>
public sealed record Item(Guid Id, int Number, string Name, ItemKind Kind, StockMeasure Measure)
{
    public int Version { get; init; } = 1;

    /// <summary>More is bought when as much is left, or less. Null: nobody watches it.</summary>
    public StockAmount? ReorderAt { get; init; }

    /// <summary>"Cage by the back door".</summary>
    public string? KeptWhere { get; init; }

    /// <summary>Off the shelf for good: it is not offered any more, and nothing falls due on it.</summary>
    public bool IsNoLongerKept { get; init; }
}

/// <summary>An item that the entry brings into being; its row is written in the same transaction.</summary>
/// <param name="Id">Made by whoever writes the entry.</param>
public sealed record NewItem(Guid Id, string Name, ItemKind Kind, StockMeasure Measure)
{
    /// <inheritdoc cref="Item.ReorderAt"/>
    public StockAmount? ReorderAt { get; init; }

    /// <inheritdoc cref="Item.KeptWhere"/>
    public string? KeptWhere { get; init; }
}
