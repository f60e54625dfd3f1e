using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Items;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Domain.Yeast;
using UnitsNet;
using static BrewFloor.Domain.Tests.Log.MatrixFloor;

namespace BrewFloor.Domain.Tests.Log;

/// <summary>What is in the tank when the condition itself says nothing about it: whatever the entry is about.</summary>
internal enum Naturally
{
    Empty,
    HoldsBeer,
    SanitizerIn,
    Exposed,
}

/// <summary>One line of the matrix: an entry as it would be written on a floor, and on what it is usually written.</summary>
internal sealed record Tried(string Kind, string What, Naturally On, Func<Floor, LogEntry> Entry);

/// <summary>The entries of the matrix, in its order.</summary>
internal static class MatrixEntries
{
    public static readonly Tried[] All =
    [
        .. Tanks(),
        .. Opening(),
        .. Beer(),
        .. OfYeast(),
        .. OfItems(),
        .. Cleaning(),
        .. OfTheLog(),
    ];

    private static IEnumerable<Tried> Tanks() =>
        [
            Empty("tank-taken-over", "as found", new TankTakenOver(K1.Id) { Soil = Soil.Clean }),
            Empty("fill-planned", "in two days", new FillPlanned(K1.Id, Next.Id, Now.AddDays(2), L(100))),
            Empty("filled", "wort of a new batch", new Filled(K1.Id, Next.Id, L(100))),
            WithBeer("topped-up", "a little more wort", new ToppedUp(K1.Id, Ale.Id, L(5))),
            WithBeer("racked", "out of it", new Racked(K1.Id, Bright.Id, Ale.Id, L(98), L(1))),
            Empty("racked", "into it", new Racked(FullOne.Id, K1.Id, Porter.Id, L(99), L(1))),
            new(
                "level-measured",
                "half full",
                Naturally.HoldsBeer,
                floor => new LevelMeasured(K1.Id, L(97)) { BatchId = BeerIn(floor) }
            ),
            new(
                "temperature",
                "18 °C",
                Naturally.HoldsBeer,
                floor => new TemperatureTaken(K1.Id, C(18)) { BatchId = BeerIn(floor) }
            ),
            WithBeer("pressure", "50 kPa", new PressureTaken(K1.Id, Kpa(50))),
            new(
                "temperature-set",
                "down to 2 °C",
                Naturally.HoldsBeer,
                floor => new TemperatureSet(K1.Id, C(2)) { BatchId = BeerIn(floor) }
            ),
            new(
                "temperature-set",
                "up to 30 °C",
                Naturally.HoldsBeer,
                floor => new TemperatureSet(K1.Id, C(30)) { BatchId = BeerIn(floor) }
            ),
            WithBeer("pressure-set", "to 100 kPa", new PressureSet(K1.Id, Kpa(100))),
            WithBeer("pressure-set", "to nothing", new PressureSet(K1.Id, Kpa(0))),
            Empty("out-of-service", "for a leak", new PutOutOfService(K1.Id, "Leaks")),
            Empty("back-in-service", "mended", new PutBackInService(K1.Id, "Mended")),
            WithBeer("emptied", "though most was in it", new Emptied(K1.Id, Ale.Id, L(1))),
        ];

    private static IEnumerable<Tried> Opening() =>
        [
            Empty("opened", "the manway", new Opened(K1.Id)),
            Empty("closed", "sealed", new Closed(K1.Id) { Closure = Closure.Sealed }),
            Empty("closed", "with its vent open", new Closed(K1.Id) { Closure = Closure.Vented }),
            Empty("vented", "to nothing", new Vented(K1.Id)),
            Empty("aired", "through the vent", new Aired(K1.Id)),
            Empty(
                "purged",
                "three times to 100 kPa",
                new Purged(K1.Id, Gas.CarbonDioxide) { Cycles = 3, Pressure = Kpa(100) }
            ),
            Empty("parts-off", "the racking arm", new PartsTakenOff(K1.Id, "Racking arm")),
            Empty("refitted", "the racking arm", new Refitted(K1.Id, "Racking arm")),
            Empty("parts-seen", "what is on its ports", new PartsSeen(K1.Id, [])),
            Empty("leak-tested", "passed", new LeakTested(K1.Id, Passed: true)),
            Empty("gasket-changed", "of the manway", new GasketChanged(K1.Id, "Manway")),
            Empty("relief-valve-tested", "passed", new ReliefValveTested(K1.Id, Passed: true)),
            Empty("pressure-tested", "passed", new PressureTested(K1.Id, Passed: true)),
            Empty("probe-calibrated", "passed", new ProbeCalibrated(K1.Id, "Thermometer", Passed: true)),
        ];

    private static IEnumerable<Tried> Beer() =>
        [
            Empty(
                "batch-taken-over",
                "beer found in it",
                new BatchTakenOver(K1.Id, new(Next.Id, "Mild", "Mild", BeerKind.Ale))
            ),
            WithBeer(
                "packaged",
                "half of it in kegs",
                new Packaged(K1.Id, Ale.Id, L(50), [new(ContainerKind.Keg, L(25), 2)]) { IsPurged = true }
            ),
            WithBeer("discarded", "a little", new Discarded(K1.Id, Ale.Id, L(5), "Spilt")),
            WithBeer("dumped", "yeast", new Dumped(K1.Id, Ale.Id, Sediment.Yeast, L(2))),
            WithBeer("dumped", "hops", new Dumped(K1.Id, Ale.Id, Sediment.Hops, L(1))),
            WithBeer(
                "dry-hopped",
                "through an opening",
                new DryHopped(K1.Id, Ale.Id, "Pellets", Mass.FromGrams(300), HopWay.ThroughOpening)
            ),
            WithBeer(
                "dry-hopped",
                "through a closed port",
                new DryHopped(K1.Id, Ale.Id, "Pellets", Mass.FromGrams(300), HopWay.ThroughEqualisedPort)
            ),
            WithBeer("gravity", "1.010", new GravityTaken(K1.Id, Ale.Id, Gravity(1.010))),
            new("ph", "4.3", Naturally.HoldsBeer, floor => new PhTaken(K1.Id, 4.3) { BatchId = BeerIn(floor) }),
        ];

    private static IEnumerable<Tried> OfYeast() =>
        [
            Empty(
                "culture-taken-over",
                "a jar in the fridge",
                new CultureTakenOver(Jar, YeastAmount.Of(Volume.FromMilliliters(500)), 1)
            ),
            Empty("culture-received", "a pack", new CultureReceived(Jar, YeastAmount.Of(Mass.FromGrams(11)))),
            WithBeer(
                "pitched",
                "fresh slurry",
                new Pitched(K1.Id, Ale.Id, [new(Slurry.Id, YeastAmount.Of(Volume.FromMilliliters(400)))])
            ),
            WithBeer(
                "harvested",
                "from the cone",
                new Harvested(K1.Id, Ale.Id, HarvestedFrom.Cone, [new(Jar, Cut.Middle, L(1), null)])
            ),
            Empty("counted", "a slurry", new Counted(Slurry.Id, 5, 100, 380, 20)),
            Empty("culture-discarded", "a slurry", new CultureDiscarded(Slurry.Id, "Old")),
        ];

    private static IEnumerable<Tried> OfItems() =>
        [
            Empty("item-received", "a canister", new ItemReceived(Acid.Id, Ml(5000))),
            Empty("item-counted", "an empty shelf", new ItemCounted(Acid.Id, Ml(0))),
            Empty("item-used", "a little", new ItemUsed(Acid.Id, Ml(100))),
            Empty("item-discarded", "a torn one", new ItemDiscarded(Gasket.Id, StockAmount.Of(1), "Torn")),
        ];

    private static IEnumerable<Tried> Cleaning() =>
        [
            Empty("rinsed", "cold", new Rinsed(K1.Id, IsHot: false)),
            Empty("rinsed", "hot", new Rinsed(K1.Id, IsHot: true)),
            Empty(
                "washed",
                "alkaline and hot",
                new Washed(K1.Id, Agent.Alkaline, Way.SprayBall)
                {
                    Temperature = C(60),
                    Minutes = Duration.FromMinutes(30),
                }
            ),
            Empty(
                "washed",
                "acid and cold in a closed circuit",
                new Washed(K1.Id, Agent.Acid, Way.SprayBall) { Temperature = C(18), IsClosedCircuit = true }
            ),
            Empty("inspected", "passed", new Inspected(K1.Id, InspectedHow.Torch, Passed: true)),
            Empty("sanitized", "soaked with peracetic acid", new Sanitized(K1.Id, Agent.Peracetic, Way.Soak)),
            new("drained", "vented since", Naturally.SanitizerIn, _ => new Drained(K1.Id, Closure.Vented)),
            Empty("passivated", "a cold citric bath", new Passivated(K1.Id, BathKind.Citric) { Temperature = C(20) }),
            Empty("air-dried", "seen dry", new AirDried(K1.Id)),
            Empty("triggered", "rust seen", new Triggered(K1.Id, Trigger.Rust)),
            Empty("exposed", "to an allergen", new Exposed(K1.Id, ExposureKind.Allergen, "Hazelnut")),
            new("cleared", "of an allergen", Naturally.Exposed, _ => new Cleared(K1.Id, ExposureKind.Allergen)),
        ];

    private static IEnumerable<Tried> OfTheLog() =>
        [
            Empty(
                "allowed",
                "to fill unsanitized",
                new Allowed(K1.Id, "filled", ["not-sanitized"], Now.AddHours(8), "Steamed at noon")
            ),
            Empty("noted", "a smell of bread", Note),
            Empty(
                "answered",
                "for what was done anyway",
                new Answered(Unanswered, "Nothing came of it") { Touched = [Note.About] }
            ),
            Empty("corrected", "a note", new Corrected(Unanswered, Note, "It was malt") { Touched = [Note.About] }),
            Empty("struck", "a note", new Struck([Unanswered], "It was the other tank") { Touched = [Note.About] }),
        ];

    private static Noted Note => new(Subject.Tank(K1.Id)) { Note = "Smells of bread" };

    private static NewCulture Jar => new(NewJar.Id, NewJar.Strain, NewJar.Kind);

    private static Guid? BeerIn(Floor floor) => floor.Tank(K1.Id).State.BatchId;

    private static Tried Empty(string kind, string what, LogEntry entry) =>
        new(kind, what, Naturally.Empty, _ => entry);

    private static Tried WithBeer(string kind, string what, LogEntry entry) =>
        new(kind, what, Naturally.HoldsBeer, _ => entry);

    private static StockAmount Ml(double milliliters) => StockAmount.Of(Volume.FromMilliliters(milliliters));

    private static Volume L(double litres) => Volume.FromLiters(litres);

    private static Temperature C(double celsius) => Temperature.FromDegreesCelsius(celsius);

    private static Pressure Kpa(double gauge) => Pressure.FromKilopascals(gauge);
}
