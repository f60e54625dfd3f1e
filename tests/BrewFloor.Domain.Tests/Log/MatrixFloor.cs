using BrewFloor.Brewing.Extract;
using BrewFloor.Brewing.Tanks;
using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.House;
using BrewFloor.Domain.Items;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Domain.Yeast;
using UnitsNet;

namespace BrewFloor.Domain.Tests.Log;

/// <summary>The tank that the matrix tries every kind of entry on, in each of its conditions.</summary>
/// <remarks>
/// A rated cone with a jacket that heats, passivated in January, washed, rinsed, inspected, sanitized and drained an hour ago, its
/// vent open and air in it. The beer is an ale of ten days, trub out and yeast in, that finished yesterday. Beside it stand a bright
/// tank, purged and empty, another full one, and two jars of slurry.
/// </remarks>
internal static class MatrixFloor
{
    public static readonly DateTimeOffset Now = new(2026, 3, 12, 9, 0, 0, TimeSpan.Zero);

    public static readonly Tank K1 = Cone(1, "K1");
    public static readonly Tank FullOne = Cone(2, "K2");
    public static readonly Tank Bright = Cone(3, "B1") with { Type = TankType.BrightTank };

    public static readonly Batch Ale = new(Guid.CreateVersion7(), 118, "Harvest Ale", "Pale ale", BeerKind.Ale)
    {
        LimitOfAttenuation = SpecificGravity.Of(1.010),
    };

    public static readonly Batch Porter = new(Guid.CreateVersion7(), 117, "Porter", "Porter", BeerKind.Ale)
    {
        LimitOfAttenuation = SpecificGravity.Of(1.010),
    };

    public static readonly Batch Next = new(Guid.CreateVersion7(), 119, "Mild", "Mild", BeerKind.Ale);

    public static readonly Culture Slurry = new(Guid.CreateVersion7(), 7, "House ale", CultureKind.Slurry);
    public static readonly Culture NewJar = new(Guid.CreateVersion7(), 8, "House ale", CultureKind.Slurry);

    public static readonly Item Acid = new(
        Guid.CreateVersion7(),
        1,
        "Peracetic acid",
        ItemKind.Chemical,
        StockMeasure.Volume
    );

    public static readonly Item Gasket = new(Guid.CreateVersion7(), 2, "Gasket", ItemKind.Part, StockMeasure.Pieces);

    /// <summary>Something was done to the tank over a stop, and nobody has answered for it.</summary>
    public static readonly Guid Unanswered = Guid.CreateVersion7();

    private static readonly HouseRules Rules = HouseRules.Defaults(
        TimeZoneInfo.FindSystemTimeZoneById("Europe/Berlin")
    );

    private static readonly LogEntry[] Sanitized = [.. Cleaned(K1.Id), .. SanitizedOn(-0.1, K1.Id)];

    private static readonly LogEntry[] Full =
    [
        .. Cleaned(K1.Id),
        .. SanitizedOn(-10.1, K1.Id),
        At(-10, new Filled(K1.Id, Ale.Id, Volume.FromLiters(100)) { Gravity = Gravity(1.050) }),
        At(-9.9, new Pitched(K1.Id, Ale.Id, []) { Words = "House ale" }),
        At(-9.5, new Dumped(K1.Id, Ale.Id, Sediment.Trub, Volume.FromLiters(1))),
        At(-3, new GravityTaken(K1.Id, Ale.Id, Gravity(1.010))),
        At(-1, new GravityTaken(K1.Id, Ale.Id, Gravity(1.010))),
        At(-0.9, new TemperatureTaken(K1.Id, Temperature.FromDegreesCelsius(18)) { BatchId = Ale.Id }),
    ];

    public static Floor Empty => Floor(Sanitized);

    public static Floor HoldsBeer => Floor(Full);

    public static Floor SanitizerIn =>
        Floor([.. Sanitized.SkipLast(2), At(-0.01, new Sanitized(K1.Id, Agent.Peracetic, Way.Soak))]);

    public static Floor After(this Floor floor, LogEntry entry) => floor.After(At(0, entry));

    /// <summary>The same floor where K1 stands otherwise.</summary>
    public static Floor Where(this Floor floor, Func<TankState, TankState> otherwise) =>
        floor with
        {
            Tanks = [.. floor.Tanks.Select(t => t.Thing.Id == K1.Id ? (t.Thing, otherwise(t.State)) : t)],
        };

    public static Floor Retired(this Floor floor) =>
        floor with
        {
            Tanks =
            [
                .. floor.Tanks.Select(t =>
                    t.Thing.Id == K1.Id ? (t.Thing with { RetiredOn = new(2026, 3, 1) }, t.State) : t
                ),
            ],
        };

    public static T At<T>(double days, T entry)
        where T : LogEntry => entry with { Id = Guid.CreateVersion7(), At = Now.AddDays(days) };

    public static GravityRead Gravity(double gravity) =>
        new(gravity, GravityScale.Sg2020, Instrument.DensityMeter, null);

    private static LogEntry[] Cleaned(Guid tank) =>
        [
            At(-60, new Washed(tank, Agent.Acid, Way.SprayBall)),
            At(-59.9, new Rinsed(tank, IsHot: false)),
            At(-59.8, new Passivated(tank, BathKind.Citric)),
            At(-59.5, new AirDried(tank)),
            At(-20.4, new Closed(tank) { Closure = Closure.Vented }),
            At(-20.3, new Washed(tank, Agent.Alkaline, Way.SprayBall)),
            At(-20.2, new Rinsed(tank, IsHot: false)),
            At(-20.1, new Inspected(tank, InspectedHow.Torch, Passed: true)),
        ];

    /// <summary>In, and an hour later out.</summary>
    private static LogEntry[] SanitizedOn(double days, Guid tank) =>
        [
            At(days, new Sanitized(tank, Agent.Peracetic, Way.Soak)),
            At(days + (1.0 / 24), new Drained(tank, Closure.Vented)),
        ];

    private static Floor Floor(IEnumerable<LogEntry> log)
    {
        LogEntry[] others =
        [
            At(-9, new Filled(FullOne.Id, Porter.Id, Volume.FromLiters(100)) { Gravity = Gravity(1.050) }),
            At(-3, new GravityTaken(FullOne.Id, Porter.Id, Gravity(1.010))),
            At(-1, new GravityTaken(FullOne.Id, Porter.Id, Gravity(1.010))),
            .. Cleaned(Bright.Id),
            .. SanitizedOn(-0.2, Bright.Id),
            At(-0.1, new Purged(Bright.Id, Gas.CarbonDioxide)),
            At(
                -1,
                new CultureTakenOver(
                    new(Slurry.Id, Slurry.Strain, Slurry.Kind),
                    YeastAmount.Of(Volume.FromMilliliters(900)),
                    2
                )
            ),
        ];
        var floor = new Floor(Rules)
        {
            Tanks = [(K1, new(K1.Id)), (FullOne, new(FullOne.Id)), (Bright, new(Bright.Id))],
            Batches = [(Ale, new(Ale.Id)), (Porter, new(Porter.Id)), (Next, new(Next.Id))],
            Cultures = [(Slurry, new(Slurry.Id)), (NewJar, new(NewJar.Id))],
            Items = [(Acid, new(Acid.Id)), (Gasket, new(Gasket.Id))],
        };
        return log.Concat(others)
            .OrderBy(entry => entry.At)
            .Aggregate(floor, (before, entry) => before.After(entry))
            .Where(tank => tank with { Unanswered = [new(new(Now, Unanswered), ["not-sanitized"])] });
    }

    private static Tank Cone(int number, string code) =>
        new(Guid.Parse($"018f0000-0000-7000-8000-0000000001{number:D2}"), code)
        {
            Type = TankType.PressureRatedConical,
            Material = Material.Stainless,
            HighestCleaning = Temperature.FromDegreesCelsius(85),
            Strapping = DipTable
                .Measured([new(Length.Zero, Volume.Zero), new(Length.FromMillimeters(1500), Volume.FromLiters(150))])
                .Value,
            Working = Volume.FromLiters(120),
            Heating = Heating.Jacket,
            Cooling = Cooling.Jacket,
            Rating = new(Pressure.FromKilopascals(200), RatingSource.Plate),
            Relief = new(Pressure.FromKilopascals(180), new(2026, 1, 12)),
        };
}
