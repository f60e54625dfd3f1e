using UnitsNet;

namespace BrewFloor.Domain.Items;

/// <summary>What an item is counted in.</summary>
public enum StockMeasure
{
    Pieces,
    Mass,
    Volume,
}

public static class StockMeasures
{
    /// <summary>What is counted has no unit of its own; where one must be said, it is this.</summary>
    public const string Pieces = "pieces";

    /// <summary>The unit in which amounts of it are stored and said: pieces, g or mL.</summary>
    public static string Unit(this StockMeasure measure) =>
        measure switch
        {
            StockMeasure.Pieces => Pieces,
            StockMeasure.Mass => "g",
            _ => "mL",
        };
}

/// <summary>How much of an item: pieces, grams or millilitres; one of them, never mixed.</summary>
public readonly record struct StockAmount
{
    private StockAmount(StockMeasure measure, double value) => (Measure, Value) = (measure, value);

    public StockMeasure Measure { get; }

    /// <summary>In pieces, g or mL.</summary>
    public double Value { get; }

    public bool IsNothing => Value <= 0;

    public static StockAmount Of(int pieces) => new(StockMeasure.Pieces, pieces);

    public static StockAmount Of(Mass mass) => new(StockMeasure.Mass, mass.Grams);

    public static StockAmount Of(Volume volume) => new(StockMeasure.Volume, volume.Milliliters);

    /// <exception cref="ArgumentException">They are counted in different measures.</exception>
    public StockAmount And(StockAmount more) => new(Measure, Value + Same(more).Value);

    /// <summary>What is left after <paramref name="taken"/>; never below nothing.</summary>
    /// <exception cref="ArgumentException">They are counted in different measures.</exception>
    public StockAmount Less(StockAmount taken) => new(Measure, Math.Max(0, Value - Same(taken).Value));

    /// <exception cref="ArgumentException">They are counted in different measures.</exception>
    public bool IsMoreThan(StockAmount other) => Value > Same(other).Value;

    private StockAmount Same(StockAmount other) =>
        other.Measure == Measure
            ? other
            : throw new ArgumentException($"{other.Measure} and {Measure} are not counted together.", nameof(other));
}
