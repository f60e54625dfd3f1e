using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Items;
using BrewFloor.Domain.Tanks;
using BrewFloor.Domain.Yeast;
using UnitsNet;

namespace BrewFloor.EndToEnd.Tests.House;

/// <summary>What was logged before a test begins: the tank as it stands when somebody walks up to it.</summary>
internal static class SomeEntries
{
    /// <summary>As found, with steel that dried a month ago; vent open, air in it.</summary>
    public static TankTakenOver Found(Tank tank, Soil soil, double hoursAgo = 100) =>
        new(tank.Id)
        {
            At = FloorApp.Ago(hoursAgo),
            Soil = soil,
            Gas = Gas.Air,
            Closure = Closure.Vented,
            Bath = tank.IsStainless ? BathKind.Citric : null,
            DriedOn = tank.IsStainless ? DateOnly.FromDateTime(FloorApp.Ago(24 * 30).DateTime) : null,
        };

    public static Filled Fill(Tank tank, Guid batch, double hoursAgo, string name = "Kitchen-table pale") =>
        new(tank.Id, batch, SomeTanks.Litres(tank.Working.Liters * 0.8))
        {
            At = FloorApp.Ago(hoursAgo),
            NewBatch = new(batch, name, "Pale ale", BeerKind.Ale)
            {
                OriginalGravity = Brewing.Extract.SpecificGravity.Of(1.050),
                LimitOfAttenuation = Brewing.Extract.SpecificGravity.Of(1.010),
            },
        };

    public static Pitched Pitch(Tank tank, Guid batch, double hoursAgo) =>
        new(tank.Id, batch, []) { At = FloorApp.Ago(hoursAgo), Words = "two packs of dry yeast" };

    public static GravityTaken Gravity(Tank tank, Guid batch, double value, double hoursAgo) =>
        new(tank.Id, batch, new GravityRead(value, GravityScale.Sg2020, Instrument.DensityMeter, Sample: null))
        {
            At = FloorApp.Ago(hoursAgo),
        };

    /// <summary>Counted yesterday; more is bought at what is there.</summary>
    public static ItemCounted OnTheShelf(string name, ItemKind kind, StockAmount amount)
    {
        var id = Guid.CreateVersion7();
        return new(id, amount)
        {
            At = FloorApp.Ago(24),
            NewItem = new(id, name, kind, amount.Measure) { ReorderAt = amount, KeptWhere = "Cage by the back door" },
        };
    }

    public static CultureReceived Received(Guid culture, double hoursAgo = 20) =>
        new(new NewCulture(culture, "House ale", CultureKind.LiquidPack), YeastAmount.Of(Volume.FromMilliliters(2000)))
        {
            At = FloorApp.Ago(hoursAgo),
            StoredAt = SomeTanks.Celsius(3),
        };
}
