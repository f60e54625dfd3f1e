using UnitsNet;

namespace BrewFloor.Domain.Yeast;

public enum CultureKind
{
    DryPack,
    LiquidPack,
    Slurry,
    Starter,
}

/// <summary>One physical lot of yeast: a fresh pack, a starter, or slurry harvested from a batch.</summary>
/// <param name="Number">Given by the store, one after the other.</param>
public sealed record Culture(Guid Id, int Number, string Strain, CultureKind Kind)
{
    public int Version { get; init; } = 1;

    /// <summary>By its number; by its strain while the entry that brings it is still being asked about.</summary>
    public object Called => Number > 0 ? Number : Strain;

    /// <summary>The date on the pack.</summary>
    public DateOnly? UseBy { get; init; }

    /// <summary>More than one species: wild yeast or bacteria that stay behind in soft parts.</summary>
    public bool IsMixed { get; init; }

    /// <summary>The strain's own limit; null: the house's.</summary>
    public int? GenerationLimit { get; init; }
}

/// <summary>A culture that the entry brings into being; its row is written in the same transaction.</summary>
/// <param name="Id">Made by whoever writes the entry.</param>
public sealed record NewCulture(Guid Id, string Strain, CultureKind Kind)
{
    public DateOnly? UseBy { get; init; }

    /// <inheritdoc cref="Culture.IsMixed"/>
    public bool IsMixed { get; init; }
}

/// <summary>How much yeast: millilitres of slurry or starter, or grams of a pack; never both, never mixed.</summary>
public readonly record struct YeastAmount
{
    private YeastAmount(double milliliters, double grams) => (Milliliters, Grams) = (milliliters, grams);

    public double Milliliters { get; }

    public double Grams { get; }

    public bool IsMass => Grams > 0;

    /// <summary>The amount in its own unit, mL or g.</summary>
    public double Value => IsMass ? Grams : Milliliters;

    public bool IsNothing => Value <= 0;

    public static YeastAmount Of(Volume volume) => new(volume.Milliliters, 0);

    public static YeastAmount Of(Mass mass) => new(0, mass.Grams);

    public bool IsSameMeasureAs(YeastAmount other) => IsNothing || other.IsNothing || IsMass == other.IsMass;

    /// <summary>Both together; the measure of <paramref name="other"/> when this is nothing.</summary>
    public YeastAmount And(YeastAmount other) => new(Milliliters + other.Milliliters, Grams + other.Grams);

    /// <summary>What is left after <paramref name="taken"/>; never below nothing.</summary>
    public YeastAmount Less(YeastAmount taken) =>
        IsMass ? new(0, Math.Max(0, Grams - taken.Value)) : new(Math.Max(0, Milliliters - taken.Value), 0);
}
