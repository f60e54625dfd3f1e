using BrewFloor.Brewing.Extract;
using BrewFloor.Brewing.Tanks;
using BrewFloor.Domain.Batches;
using BrewFloor.Domain.House;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Domain.Yeast;
using UnitsNet;

namespace BrewFloor.Domain.Tests.Tanks;

/// <summary>The words the floor's tests are written in: a small floor, its days, and what happens on tanks.</summary>
/// <remarks>Words that name no tank mean K3, words that name no batch mean batch 118.</remarks>
internal static class TankLogs
{
    private static readonly TimeZoneInfo Berlin = TimeZoneInfo.FindSystemTimeZoneById("Europe/Berlin");

    public static readonly HouseRules Rules = HouseRules.Defaults(Berlin);

    /// <summary>A stainless cone on a jacket: 1,200 L to the brim, 1,000 L working, no rating.</summary>
    public static readonly Tank K3 = new(Guid.Parse("018f0000-0000-7000-8000-000000000003"), "K3")
    {
        Type = TankType.ConicalFermenter,
        Material = Material.Stainless,
        HighestCleaning = Temperature.FromDegreesCelsius(85),
        Strapping = Straight(1200),
        Working = Volume.FromLiters(1000),
        Cooling = Cooling.Jacket,
        HeadspaceWanted = 0.10,
    };

    /// <summary>A cone rated for 200 kPa by its plate, relief valve at 180 kPa tested on 1 Dec 2025.</summary>
    public static readonly Tank P2 = new(Guid.Parse("018f0000-0000-7000-8000-000000000002"), "P2")
    {
        Type = TankType.PressureRatedConical,
        Material = Material.Stainless,
        HighestCleaning = Temperature.FromDegreesCelsius(85),
        Strapping = Straight(600),
        Working = Volume.FromLiters(500),
        Cooling = Cooling.Jacket,
        HeadspaceWanted = 0.10,
        Rating = new(Pressure.FromKilopascals(200), RatingSource.Plate),
        Relief = new(Pressure.FromKilopascals(180), new DateOnly(2025, 12, 1)),
    };

    /// <summary>A bright tank: full to the brim is how it is used.</summary>
    public static readonly Tank B1 = new(Guid.Parse("018f0000-0000-7000-8000-000000000001"), "B1")
    {
        Type = TankType.BrightTank,
        Material = Material.Stainless,
        HighestCleaning = Temperature.FromDegreesCelsius(85),
        Strapping = Straight(1050),
        Working = Volume.FromLiters(1000),
        HeadspaceWanted = 0,
        Cooling = Cooling.Jacket,
        Rating = new(Pressure.FromKilopascals(200), RatingSource.Plate),
        Relief = new(Pressure.FromKilopascals(180), new DateOnly(2025, 12, 1)),
    };

    /// <summary>A plastic cone with a heating belt: 60 L to the brim.</summary>
    public static readonly Tank S1 = new(Guid.Parse("018f0000-0000-7000-8000-000000000004"), "S1")
    {
        Type = TankType.PlasticConical,
        Material = Material.Plastic,
        HighestCleaning = Temperature.FromDegreesCelsius(50),
        Strapping = Straight(60),
        Working = Volume.FromLiters(50),
        HeadspaceWanted = 0.15,
        Heating = Heating.Belt,
    };

    /// <summary>A bucket, whose lid is no seal.</summary>
    public static readonly Tank Bucket = new(Guid.Parse("018f0000-0000-7000-8000-000000000005"), "BK1")
    {
        Type = TankType.Bucket,
        Material = Material.Plastic,
        HighestCleaning = Temperature.FromDegreesCelsius(40),
        Strapping = Straight(30),
        Working = Volume.FromLiters(25),
        HeadspaceWanted = 0.15,
        IsOpenType = true,
    };

    public static readonly Batch Batch118 = new(
        Guid.Parse("018f0000-0000-7000-8000-000000000118"),
        118,
        "Harvest Ale",
        "Pale ale",
        BeerKind.Ale
    )
    {
        LimitOfAttenuation = SpecificGravity.Of(1.010),
    };

    public static readonly Batch Batch119 = new(
        Guid.Parse("018f0000-0000-7000-8000-000000000119"),
        119,
        "Cellar Lager",
        "Pilsner",
        BeerKind.Lager
    );

    /// <summary>The floor before anything happened: every tank empty and new, no beer, no yeast.</summary>
    public static readonly Floor NewFloor = new(Rules)
    {
        Tanks = [Fresh(K3), Fresh(P2), Fresh(B1), Fresh(S1), Fresh(Bucket)],
        Batches = [(Batch118, new(Batch118.Id)), (Batch119, new(Batch119.Id))],
    };

    /// <summary>Day 0 is Monday, 2 March 2026, by the clock in Berlin (winter time).</summary>
    public static DateTimeOffset Day(double day, double hour = 8) =>
        new DateTimeOffset(2026, 3, 2, 0, 0, 0, TimeSpan.FromHours(1)).ToUniversalTime().AddDays(day).AddHours(hour);

    /// <summary>The floor after a log that begins on the new floor.</summary>
    public static Floor After(params ReadOnlySpan<LogEntry> log) => NewFloor.And(log);

    public static Floor And(this Floor floor, params ReadOnlySpan<LogEntry> log)
    {
        foreach (var entry in log)
        {
            floor = floor.After(entry);
        }

        return floor;
    }

    /// <summary>The same floor with other numbers of the house.</summary>
    public static Floor Under(this Floor floor, Func<HouseRules, HouseRules> rules) =>
        floor with
        {
            Rules = rules(floor.Rules),
        };

    /// <summary>The same floor where a tank or a batch is another thing than usual.</summary>
    public static Floor Where(this Floor floor, Tank tank) =>
        floor with
        {
            Tanks = [.. floor.Tanks.Select(t => t.Thing.Id == tank.Id ? (tank, t.State) : t)],
        };

    public static Floor Where(this Floor floor, Batch batch) =>
        floor with
        {
            Batches = [.. floor.Batches.Select(b => b.Thing.Id == batch.Id ? (batch, b.State) : b)],
        };

    /// <summary>The same floor where a tank stands otherwise, by whatever log.</summary>
    public static Floor Standing(this Floor floor, Tank tank, Func<TankState, TankState> otherwise) =>
        floor with
        {
            Tanks = [.. floor.Tanks.Select(t => t.Thing.Id == tank.Id ? (t.Thing, otherwise(t.State)) : t)],
        };

    public static TankState Of(this Floor floor, Tank tank) => floor.Tank(tank.Id).State;

    public static BatchState Of(this Floor floor, Batch batch) => floor.Batch(batch.Id).State;

    public static CultureState Of(this Floor floor, Culture culture) => floor.Culture(culture.Id).State;

    /// <summary>What the floor says to one more entry.</summary>
    public static Verdict Says(this Floor floor, LogEntry entry) => entry.JudgedOn(floor);

    public static IEnumerable<string> Codes(this Verdict verdict) => verdict.Objections.Select(o => o.Code);

    /// <summary>The objection of a code, or none.</summary>
    public static Objection? About(this Verdict verdict, string code) =>
        verdict.Objections.FirstOrDefault(o => code.Equals(o.Code, StringComparison.Ordinal));

    public static Level? LevelOf(this Verdict verdict, string code) => verdict.About(code)?.Level;

    /// <summary>An entry under a new id, on a day at an hour (8 in the morning unless said).</summary>
    public static T On<T>(this T entry, double day, double hour = 8)
        where T : LogEntry => entry with { Id = Guid.CreateVersion7(), At = Day(day, hour) };

    public static Volume L(double litres) => Volume.FromLiters(litres);

    public static Temperature C(double celsius) => Temperature.FromDegreesCelsius(celsius);

    public static Pressure KPa(double gauge) => Pressure.FromKilopascals(gauge);

    /// <summary>A tank in which every litre is a millimetre.</summary>
    public static IStrapping Straight(double litres) =>
        DipTable.Measured([new(Length.Zero, Volume.Zero), new(Length.FromMillimeters(litres), L(litres))]).Value;

    private static (Tank, TankState) Fresh(Tank tank) => (tank, new TankState(tank.Id));
}
