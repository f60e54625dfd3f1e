using BrewFloor.Brewing.Extract;
using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Tanks;
using BrewFloor.Domain.Yeast;
using UnitsNet;
using static BrewFloor.Domain.Tests.Tanks.TankLogs;

namespace BrewFloor.Domain.Tests.Tanks;

/// <summary>Words for beer that comes, stays and goes. Each gives the entry without a day: <c>Filled(900).On(0)</c>.</summary>
internal static class BeerLogs
{
    public static Filled Filled(double litres = 900, Tank? tank = null, Batch? batch = null) =>
        new((tank ?? K3).Id, (batch ?? Batch118).Id, L(litres));

    /// <summary>The wort of batch 118: OG 1.050 (12.4 °P).</summary>
    public static Filled FilledAt(double gravity, double litres = 900, Tank? tank = null, Batch? batch = null) =>
        Filled(litres, tank, batch) with
        {
            Gravity = Sg(gravity),
        };

    public static ToppedUp ToppedUp(double litres, Tank? tank = null, Batch? batch = null) =>
        new((tank ?? K3).Id, (batch ?? Batch118).Id, L(litres));

    public static Racked Racked(double litres, Tank? from = null, Tank? to = null, double left = 0) =>
        new((from ?? K3).Id, (to ?? B1).Id, Batch118.Id, L(litres), L(left));

    public static Packaged Kegged(double litres, Tank? tank = null) =>
        new((tank ?? K3).Id, Batch118.Id, L(litres), [new(ContainerKind.Keg, L(30), (int)(litres / 30))])
        {
            IsPurged = true,
        };

    public static Packaged Bottled(double litres, Tank? tank = null) =>
        new((tank ?? K3).Id, Batch118.Id, L(litres), [new(ContainerKind.Bottle, L(0.5), (int)(litres * 2))])
        {
            IsPurged = true,
        };

    public static Packaged Rest(this Packaged packaged, double heel = 0) =>
        packaged with
        {
            IsRest = true,
            Heel = L(heel),
        };

    public static Discarded Discarded(double litres, Tank? tank = null, bool rest = false) =>
        new((tank ?? K3).Id, Batch118.Id, L(litres), "infected") { IsRest = rest };

    public static Emptied Emptied(Tank? tank = null, double heel = 0) => new((tank ?? K3).Id, Batch118.Id, L(heel));

    public static Dumped Dumped(Sediment what, double litres = 5, Tank? tank = null) =>
        new((tank ?? K3).Id, Batch118.Id, what, L(litres));

    public static DryHopped DryHopped(HopWay way = HopWay.ThroughOpening, Tank? tank = null) =>
        new((tank ?? K3).Id, Batch118.Id, "Dry hop 1", Mass.FromGrams(2000), way);

    public static LevelMeasured LevelMeasured(double litres, Tank? tank = null, Batch? batch = null) =>
        new((tank ?? K3).Id, L(litres)) { BatchId = (batch ?? Batch118).Id };

    public static TemperatureTaken Read(double celsius, Tank? tank = null) =>
        new((tank ?? K3).Id, C(celsius)) { BatchId = Batch118.Id };

    public static TemperatureSet SetTo(double celsius, Tank? tank = null, Batch? batch = null) =>
        new((tank ?? K3).Id, C(celsius)) { BatchId = batch?.Id };

    /// <summary>A gravity by density meter.</summary>
    public static GravityTaken Gravity(double gravity, Tank? tank = null) =>
        new((tank ?? K3).Id, Batch118.Id, Sg(gravity));

    public static GravityTaken ByHydrometer(double gravity, Tank? tank = null) =>
        new((tank ?? K3).Id, Batch118.Id, Sg(gravity) with { Instrument = Instrument.Hydrometer });

    /// <summary>Yeast that is no culture of this house.</summary>
    public static Pitched Pitched(Tank? tank = null) =>
        new((tank ?? K3).Id, Batch118.Id, []) { Words = "dry yeast from the drawer" };

    public static Harvested Harvested(double litres, Tank? tank = null) =>
        new(
            (tank ?? K3).Id,
            Batch118.Id,
            HarvestedFrom.Cone,
            [new(new(Guid.CreateVersion7(), "house ale", CultureKind.Slurry), Cut.Middle, L(litres), null)]
        );

    public static PhTaken Ph(double ph) => new(K3.Id, ph) { BatchId = Batch118.Id };

    public static FillPlanned FillPlanned(double day, double litres = 900, Tank? tank = null, Batch? batch = null) =>
        new((tank ?? K3).Id, (batch ?? Batch118).Id, Day(day), L(litres));

    public static PutOutOfService OutOfService(Tank? tank = null) => new((tank ?? K3).Id, "weld cracked");

    public static PutBackInService BackInService(Tank? tank = null) => new((tank ?? K3).Id, "welded");

    public static BatchTakenOver BatchTakenOver(double? litres, Tank? tank = null) =>
        new((tank ?? K3).Id, new NewBatch(Batch118.Id, "Harvest Ale", "Pale ale", BeerKind.Ale))
        {
            Volume = litres is { } known ? L(known) : null,
        };

    /// <summary>A batch of wort that brings something to the walls.</summary>
    public static Filled With(this Filled filled, params string[] allergens) =>
        filled with
        {
            NewBatch = new(filled.BatchId, "Harvest Ale", "Pale ale", BeerKind.Ale) { Allergens = [.. allergens] },
        };

    public static GravityRead Sg(double gravity) => new(gravity, GravityScale.Sg2020, Instrument.DensityMeter, null);

    public static SpecificGravity Sg20(double gravity) => SpecificGravity.Of(gravity);
}
