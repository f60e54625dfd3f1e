using BrewFloor.Brewing.Extract;
using BrewFloor.Brewing.Tanks;
using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.House;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Domain.Yeast;
using UnitsNet;

namespace BrewFloor.Domain.Tests.Yeast;

/// <summary>The words the yeast tests are written in: tank K3 with batch 118 in it, and three jars.</summary>
internal static class YeastLogs
{
    public static readonly HouseRules Rules = HouseRules.Defaults(TimeZoneInfo.FindSystemTimeZoneById("Europe/Berlin"));

    public static readonly Tank K3 = new(Guid.Parse("018f0000-0000-7000-8000-000000000003"), "K3")
    {
        Type = TankType.PressureRatedConical,
        Material = Material.Stainless,
        HighestCleaning = Temperature.FromDegreesCelsius(85),
        Strapping = DipTable.Measured([new(Mm(0), Litres(0)), new(Mm(1500), Litres(130))]).Value,
        Working = Litres(100),
    };

    public static readonly Batch Batch118 = new(
        Guid.Parse("018f0000-0000-7000-8000-000000000118"),
        118,
        "Harvest Pale",
        "Pale ale",
        BeerKind.Ale
    );

    public static readonly Culture Pack = Jar(1, CultureKind.DryPack);
    public static readonly Culture Slurry = Jar(2, CultureKind.Slurry);
    public static readonly Culture Second = Jar(3, CultureKind.Slurry);

    /// <summary>Day 0 is the morning of 2 March 2026 in Berlin.</summary>
    public static DateTimeOffset Day(double day) => new DateTimeOffset(2026, 3, 2, 7, 0, 0, TimeSpan.Zero).AddDays(day);

    public static Volume Litres(double litres) => Volume.FromLiters(litres);

    public static YeastAmount Ml(double ml) => YeastAmount.Of(Volume.FromMilliliters(ml));

    public static YeastAmount Grams(double grams) => YeastAmount.Of(Mass.FromGrams(grams));

    public static SpecificGravity Sg(double sg) => SpecificGravity.Of(sg);

    public static Temperature Celsius(double celsius) => Temperature.FromDegreesCelsius(celsius);

    /// <summary>An entry that happened on this day.</summary>
    public static T On<T>(double day, T entry)
        where T : LogEntry => entry with { Id = Guid.CreateVersion7(), At = Day(day) };

    public static NewCulture New(Culture culture, bool isMixed = false) =>
        new(culture.Id, culture.Strain, culture.Kind) { IsMixed = isMixed };

    public static CultureTakenOver Fridge(Culture culture, int generation, double ml = 1000, bool isMixed = false) =>
        new(New(culture, isMixed), Ml(ml), generation) { StoredAt = Celsius(3) };

    public static CultureReceived Received(Culture culture, YeastAmount amount) => new(New(culture), amount);

    public static Pitched Pitched(params ReadOnlySpan<(Culture Culture, YeastAmount Amount)> cultures) =>
        new(K3.Id, Batch118.Id, [.. cultures.ToArray().Select(c => new CulturePitched(c.Culture.Id, c.Amount))]);

    public static Harvested Harvested(params ReadOnlySpan<(Culture Culture, double Ml)> cuts) =>
        new(
            K3.Id,
            Batch118.Id,
            HarvestedFrom.Cone,
            [
                .. cuts.ToArray()
                    .Select(c => new CutTaken(
                        New(c.Culture),
                        Cut.Middle,
                        Volume.FromMilliliters(c.Ml).ToUnit(UnitsNet.Units.VolumeUnit.Liter),
                        null
                    )),
            ]
        )
        {
            StoredAt = Celsius(3),
        };

    /// <summary>The beer as it stands before yeast comes to it; what brought it there is another subject's test.</summary>
    public static TankState WithBeer(double litres = 100) =>
        new(K3.Id)
        {
            Contents = new(Holding.Beer, default) { BatchId = Batch118.Id, Volume = Litres(litres) },
            Soil = Soil.InUse,
            Closure = Closure.Vented,
        };

    public static BatchState Wort(double og = 1.048, double litres = 100) =>
        new(Batch118.Id)
        {
            Filled = new(Day(0), Guid.CreateVersion7()),
            OriginalGravity = Sg(og),
            InTanks = [new(K3.Id, Litres(litres), new(Day(0), Guid.CreateVersion7()))],
            Litres = new() { FilledIn = Litres(litres) },
        };

    public static Floor TheFloor(TankState? tank = null, BatchState? batch = null) =>
        new(Rules)
        {
            Tanks = [(K3, tank ?? WithBeer())],
            Batches = [(Batch118, batch ?? Wort())],
            Cultures = [.. new[] { Pack, Slurry, Second }.Select(c => (c, new CultureState(c.Id)))],
        };

    public static Floor After(this Floor floor, params ReadOnlySpan<LogEntry> log)
    {
        foreach (var entry in log)
        {
            floor = floor.After(entry);
        }

        return floor;
    }

    public static CultureState Of(this Floor floor, Culture culture) => floor.Culture(culture.Id).State;

    public static BatchState Beer(this Floor floor) => floor.Batch(Batch118.Id).State;

    public static TankState Vessel(this Floor floor) => floor.Tank(K3.Id).State;

    public static IEnumerable<string> Codes(this Verdict verdict) => verdict.Objections.Select(o => o.Code);

    private static Length Mm(double mm) => Length.FromMillimeters(mm);

    private static Culture Jar(int number, CultureKind kind) =>
        new(Guid.Parse($"018f0000-0000-7000-8000-0000000009{number:D2}"), number, "House ale", kind);
}
