using BrewFloor.Domain.Tanks;

namespace BrewFloor.DemoSeed;

/// <summary>A row of the brewing plan: what is brewed into which tank on which day, and what is special about it.</summary>
internal sealed record Brew(int Day, Tank Tank, Beer Beer)
{
    /// <summary>The brew day whose yeast is pitched; null: a fresh pack.</summary>
    public int? YeastOf { get; init; }

    /// <summary>The strain of a fresh pack.</summary>
    public string Strain { get; init; } = Seasons.AleStrain;

    /// <summary>Its yeast is taken for a later brew, or in case of one.</summary>
    public bool IsHarvested { get; init; }

    /// <summary>Put on the plan a week before.</summary>
    public bool IsPlanned { get; init; }

    /// <summary>A second run of the kettle came after it, in L.</summary>
    public double ToppedUpBy { get; init; }

    /// <summary>Another day than the beer's own; a day that hasn't come yet: it is still in its tank.</summary>
    public int? RackedOn { get; init; }

    /// <summary>Poured away that many days after, and why.</summary>
    public (int On, string Why)? Discarded { get; init; }

    /// <summary>Its trub is still in the cone.</summary>
    public bool TrubWaits { get; init; }

    /// <summary>The bright tank it was packaged from isn't washed yet.</summary>
    public bool BrightWaits { get; init; }

    /// <summary>The sanitizing had lapsed when the wort was ready, and a brewer allowed it beforehand: why.</summary>
    public string? AllowedBecause { get; init; }

    /// <summary>The sanitizing had lapsed, and it was filled all the same: what was said.</summary>
    public string? DoneAnywayBecause { get; init; }

    public string? Note { get; init; }

    /// <summary>When the tank is sanitized and when the wort comes, in hours of the day.</summary>
    public (int Sanitized, int Filled) Hours =>
        TrubWaits ? (6, 9)
        : AllowedBecause is not null || DoneAnywayBecause is not null ? (6, 12)
        : (9, 12);

    /// <summary>Bottled without CO2: what was said to the caution.</summary>
    public string? UnpurgedBecause { get; init; }

    /// <summary>Its tank and its day: a name for the dice.</summary>
    public string Name => $"{Tank.Code} {Day}";

    /// <summary>In L, what the kettle gave: never quite the same.</summary>
    public double Litres => Math.Round(Usual + Dice.Swing($"kettle {Name}", 0.013 * Usual));

    /// <summary>No two brews are quite the same: some tenths of a °P, some hours.</summary>
    public Beer AsBrewed =>
        Beer with
        {
            Original = Math.Round(Beer.Original + Dice.Swing($"wort {Name}", 0.25), 1),
            Half = Beer.Half - Dice.Below($"pace {Name}", 4),
        };

    private double Usual =>
        Tank.Code switch
        {
            "P1" => 300,
            "P2" => 168,
            "K3" => 112,
            "S1" => 80,
            "E1" => 22,
            _ => 230,
        };
}
