using BrewFloor.Brewing.Carbonation;
using BrewFloor.Brewing.Extract;
using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Batches;

public enum BeerKind
{
    Ale,
    Lager,
}

/// <summary>What a batch is: its name and what is planned for it. What happened to it is in the log.</summary>
/// <param name="Number">Given by the store, one after the other.</param>
public sealed record Batch(Guid Id, int Number, string Name, string Style, BeerKind Kind)
{
    public int Version { get; init; } = 1;

    /// <summary>By its number; by its name while the entry that brings it is still being asked about.</summary>
    public object Called => Number > 0 ? Number : Name;

    /// <summary>The lowest apparent gravity the yeast can reach: a forced ferment, the strain's history, or the plan.</summary>
    public SpecificGravity? LimitOfAttenuation { get; init; }

    /// <summary>A forced ferment of this wort found the limit: it is sharper than a plan.</summary>
    public bool IsLimitForced { get; init; }

    /// <summary>The plan says to dry hop while it still ferments, so the yeast is not expected to be out.</summary>
    public bool DryHopsDuringFermentation { get; init; }

    /// <summary>The plan wants the yeast of this batch: no yeast is dumped before it is harvested.</summary>
    public bool HarvestPlanned { get; init; }

    /// <summary>What it is to hold when it leaves the tank; given, the valve is to be closed in time to make it.</summary>
    public CarbonDioxideContent? CarbonDioxideWanted { get; init; }

    /// <summary>Colour of the beer, in EBC units; for the drawing only.</summary>
    public double? ColourEbc { get; init; }
}

/// <summary>A batch that the entry brings into being; its row is written in the same transaction.</summary>
/// <param name="Id">Made by whoever writes the entry.</param>
public sealed record NewBatch(Guid Id, string Name, string Style, BeerKind Kind)
{
    /// <summary>Of the wort, before the yeast.</summary>
    public SpecificGravity? OriginalGravity { get; init; }

    public SpecificGravity? LimitOfAttenuation { get; init; }

    public bool HarvestPlanned { get; init; }

    public bool DryHopsDuringFermentation { get; init; }

    public CarbonDioxideContent? CarbonDioxideWanted { get; init; }

    public double? ColourEbc { get; init; }

    public Listed<string> Allergens { get; init; }

    /// <summary>What its wort brings to the walls of a tank.</summary>
    internal Listed<HandedOver> Carries =>
        Allergens is [] ? [] : [new Carried(Subject.Batch(Id), MixedCulture: false, Allergens)];
}
