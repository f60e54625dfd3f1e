using BrewFloor.Brewing.Carbonation;
using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using UnitsNet;

namespace BrewFloor.DemoSeed;

/// <summary>A batch while its story is told: its days, and what is left of its litres.</summary>
internal sealed class BatchAccount(Brew brew, Guid id)
{
    public Guid Id => id;

    public Brew Brew => brew;

    /// <summary>Its tank and its day: a name for the dice.</summary>
    public string Name => brew.Name;

    public Tank Tank => brew.Tank;

    public Beer Beer { get; } = brew.AsBrewed;

    public string Strain { get; set; } = "";

    /// <summary>The entry that brought the wort.</summary>
    public LogEntry? Filled { get; set; }

    public DateTimeOffset PitchedAt { get; set; }

    /// <summary>In L, in the tank it is in.</summary>
    public double Left { get; private set; } = brew.Litres + brew.ToppedUpBy;

    /// <summary>The day of the scenario, so many days after brewing.</summary>
    public int Day(int after) => brew.Day + after;

    public int RackedOn => brew.RackedOn ?? Beer.RackedOn;

    /// <summary>The day it is told to be cold, counted from brewing.</summary>
    public int CrashedOn => Beer.FinishedOn + (Beer.IsDryHopped ? 5 : 1);

    /// <summary>The day it is cold.</summary>
    public int ColdOn => CrashedOn + 2;

    // What 80 kPa hold at 19 °C.
    private static readonly CarbonDioxideContent Spunded = CarbonDioxideContent.OfVolumes(1.5).Value;

    public NewBatch AsNew =>
        new(Id, Beer.Name, Beer.Style, Beer.Kind)
        {
            OriginalGravity = Beer.Wort,
            LimitOfAttenuation = Beer.Limit,
            HarvestPlanned = brew.IsHarvested,
            ColourEbc = Beer.ColourEbc,
            CarbonDioxideWanted = Tank.Type is TankType.PressureRatedConical ? Spunded : null,
            Allergens = Beer.Allergen is { } allergen ? [allergen] : [],
        };

    /// <summary>Lets some out, in tenths of a litre.</summary>
    public void Out(double litres, out Volume gone)
    {
        gone = Volume.FromLiters(Math.Round(litres, 1));
        Left -= gone.Liters;
    }
}
