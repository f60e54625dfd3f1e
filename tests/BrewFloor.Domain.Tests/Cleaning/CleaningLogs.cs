using BrewFloor.Brewing.Tanks;
using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.House;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using UnitsNet;

namespace BrewFloor.Domain.Tests.Cleaning;

/// <summary>The words the tests of cleaning, gas and pressure are written in: three tanks, and what is done to the first.</summary>
internal static class CleaningLogs
{
    public static readonly HouseRules Rules = HouseRules.Defaults(TimeZoneInfo.FindSystemTimeZoneById("Europe/Berlin"));

    /// <summary>Stainless, 25 L, rated 200 kPa, relief valve at 150 kPa tested on 1 February 2026.</summary>
    public static readonly Tank K3 = new(Guid.Parse("018f0000-0000-7000-8000-000000000003"), "K3")
    {
        Type = TankType.PressureRatedConical,
        Material = Material.Stainless,
        HighestCleaning = Celsius(85),
        Strapping = DipTable.Measured([new(Mm(0), Litres(0)), new(Mm(500), Litres(25))]).Value,
        Working = Litres(20),
        Rating = new(KPa(200), RatingSource.Plate),
        Relief = new(KPa(150), new(2026, 2, 1)),
    };

    public static readonly Tank Plastic = K3 with
    {
        Type = TankType.PlasticConical,
        Material = Material.Plastic,
        HighestCleaning = Celsius(50),
        Rating = null,
        Relief = null,
    };

    public static readonly Tank Bucket = Plastic with { Type = TankType.Bucket, IsOpenType = true };

    public static readonly Guid Batch118 = Guid.Parse("018f0000-0000-7000-8000-000000000118");

    /// <summary>What makes a soiled tank clean: cleaned by 5 o'clock.</summary>
    public static readonly LogEntry[] Cleaned = [Washed(2), Rinsed(3), Inspected(4)];

    /// <summary>Hours after eight o'clock on 2 March 2026 in Berlin.</summary>
    public static DateTimeOffset At(double hour) =>
        new DateTimeOffset(2026, 3, 2, 7, 0, 0, TimeSpan.Zero) + TimeSpan.FromHours(hour);

    public static DateTimeOffset At(double hour, double minutes) => At(hour) + TimeSpan.FromMinutes(minutes);

    /// <summary>An entry that happened at this hour.</summary>
    public static T Then<T>(double hour, T entry)
        where T : LogEntry => entry with { Id = Guid.CreateVersion7(), At = At(hour) };

    public static Volume Litres(double litres) => Volume.FromLiters(litres);

    public static Length Mm(double mm) => Length.FromMillimeters(mm);

    public static Temperature Celsius(double celsius) => Temperature.FromDegreesCelsius(celsius);

    public static Pressure KPa(double kPa) => Pressure.FromKilopascals(kPa);

    public static Washed Washed(double hour, Agent cleaner = Agent.Alkaline, double? celsius = null) =>
        Then(hour, new Washed(K3.Id, cleaner, Way.SprayBall) { Temperature = celsius is { } c ? Celsius(c) : null });

    public static Rinsed Rinsed(double hour, bool hot = false) => Then(hour, new Rinsed(K3.Id, hot));

    public static Inspected Inspected(double hour, bool passed = true) =>
        Then(hour, new Inspected(K3.Id, InspectedHow.Torch, passed));

    public static Sanitized Sanitized(double hour, Agent agent = Agent.Peracetic, Way how = Way.SprayBall) =>
        Then(hour, new Sanitized(K3.Id, agent, how));

    public static Drained Drained(double hour, Closure held = Closure.Closed, bool underGas = false) =>
        Then(hour, new Drained(K3.Id, held) { IsUnderCarbonDioxide = underGas });

    public static Passivated Passivated(double hour, bool rinsed = false) =>
        Then(hour, new Passivated(K3.Id, BathKind.Citric) { IsRinsed = rinsed });

    public static AirDried AirDried(double hour) => Then(hour, new AirDried(K3.Id));

    public static Triggered Triggered(double hour, Trigger by = Trigger.Rust) => Then(hour, new Triggered(K3.Id, by));

    public static Exposed Exposed(
        double hour,
        ExposureKind kind = ExposureKind.MixedCulture,
        string what = "wild ale"
    ) => Then(hour, new Exposed(K3.Id, kind, what));

    public static Cleared Cleared(double hour) => Then(hour, new Cleared(K3.Id, ExposureKind.MixedCulture));

    public static Opened Opened(double hour) => Then(hour, new Opened(K3.Id));

    public static Closed Closed(double hour, Closure closure = Closure.Closed) =>
        Then(hour, new Closed(K3.Id) { Closure = closure });

    public static Vented Vented(double hour) => Then(hour, new Vented(K3.Id));

    public static Aired Aired(double hour) => Then(hour, new Aired(K3.Id));

    public static Purged Purged(double hour, double? kPa = null) =>
        Then(hour, new Purged(K3.Id, Gas.CarbonDioxide) { Pressure = kPa is { } p ? KPa(p) : null });

    public static PressureTaken Read(double hour, double kPa) => Then(hour, new PressureTaken(K3.Id, KPa(kPa)));

    public static PressureSet Set(double hour, double kPa) => Then(hour, new PressureSet(K3.Id, KPa(kPa)));

    public static PartsTakenOff PartsOff(double hour) => Then(hour, new PartsTakenOff(K3.Id, "bottom valve"));

    public static Refitted Refitted(double hour) => Then(hour, new Refitted(K3.Id, "bottom valve"));

    public static LeakTested LeakTested(double hour, bool passed = true) => Then(hour, new LeakTested(K3.Id, passed));

    public static ReliefValveTested ReliefTested(double hour, bool passed = true) =>
        Then(hour, new ReliefValveTested(K3.Id, passed));

    /// <summary>A tank as these entries leave it; first of all it is empty, open, full of air and nobody knows its soil.</summary>
    public static TankState After(params ReadOnlySpan<LogEntry> log) => new TankState(K3.Id).Then(log);

    public static TankState Then(this TankState tank, params ReadOnlySpan<LogEntry> log) =>
        log.ToArray().Aggregate(tank, (state, entry) => (TankState)state.After(entry));

    /// <summary>Beer of batch 118 in it, as a filling leaves it.</summary>
    public static TankState WithBeer(this TankState tank, double litres = 20) =>
        tank with
        {
            Soil = Soil.InUse,
            Contents = new(Holding.Beer, default) { BatchId = Batch118, Volume = Litres(litres) },
        };

    /// <summary>As an emptying at this hour leaves it.</summary>
    public static TankState Soiled(double hour) =>
        new(K3.Id)
        {
            Soil = Soil.Soiled,
            SoilSince = new(At(hour), Guid.CreateVersion7()),
            Gas = Gas.Air,
        };

    /// <summary>What the floor says to one more entry.</summary>
    public static Listed<Objection> Says(this TankState state, LogEntry entry, Tank? tank = null) =>
        entry.JudgedOn(new Floor(Rules) { Tanks = [(tank ?? K3, state)] }).Objections;

    public static string[] Codes(this Listed<Objection> objections) => [.. objections.Select(o => o.Code)];
}
