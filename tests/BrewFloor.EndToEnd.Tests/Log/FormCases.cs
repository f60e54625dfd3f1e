using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.EndToEnd.Tests.House;
using static BrewFloor.EndToEnd.Tests.House.SomeEntries;

namespace BrewFloor.EndToEnd.Tests.Log;

/// <summary>A case for every form there is.</summary>
internal static class FormCases
{
    private static readonly Func<Visit, Task> NothingToType = _ => Task.CompletedTask;

    public static readonly IReadOnlyDictionary<string, FormCase> ByKind = new[]
    {
        Cleaning(),
        States(),
        Beer(),
        Readings(),
        Parts(),
        Yeast(),
    }
        .SelectMany(cases => cases)
        .ToDictionary(one => one.Key, one => one.Value, StringComparer.Ordinal);

    private static Dictionary<string, FormCase> Cleaning() =>
        new(StringComparer.Ordinal)
        {
            ["aired"] = new(
                SomeTanks.Conical,
                t => [Found(t, Soil.Soiled) with { Gas = Gas.CarbonDioxide }],
                NothingToType
            ),
            ["rinsed"] = new(SomeTanks.Conical, t => [Found(t, Soil.Soiled)], v => v.TickAsync("Hot")),
            ["washed"] = new(SomeTanks.Conical, t => [Found(t, Soil.Soiled)], WashAsync),
            ["cleaned"] = new(
                SomeTanks.Conical,
                t => [Found(t, Soil.Soiled)],
                async v =>
                {
                    await WashAsync(v);
                    await v.ChooseAsync("Looked at by", "By eye");
                    await v.ChooseAsync("Result", "Passed");
                }
            )
            {
                Shows = "Washed",
            },
            ["inspected"] = new(
                SomeTanks.Conical,
                t => [Found(t, Soil.Rinsed)],
                async v =>
                {
                    await v.ChooseAsync("How", "Swab");
                    await v.ChooseAsync("Result", "Failed");
                }
            ),
            ["sanitized"] = new(
                SomeTanks.Conical,
                t => [Found(t, Soil.Clean)],
                async v =>
                {
                    await v.ChooseAsync("Sanitizer", "Peracetic acid");
                    await v.ChooseAsync("How", "Soak");
                    await v.TypeAsync("Contact", "10", "min");
                }
            ),
            ["drained"] = new(
                SomeTanks.Conical,
                t => [Found(t, Soil.Clean) with { Contents = Holding.Sanitizer }],
                v => v.ChooseAsync("How it stands now", "Closed, no pressure")
            ),
            ["passivated"] = new(
                SomeTanks.Conical,
                t => [Found(t, Soil.Clean)],
                async v =>
                {
                    await v.ChooseAsync("Bath", "Citric acid, to a published practice");
                    await v.TypeAsync("Concentration", "10 % by weight");
                    await v.TypeAsync("Temperature", "50", "°C");
                    await v.TypeAsync("Contact", "60", "min");
                }
            ),
            ["air-dried"] = new(
                SomeTanks.Conical,
                t =>
                    [
                        Found(t, Soil.Clean),
                        new Passivated(t.Id, BathKind.Citric) { At = FloorApp.Ago(20) },
                        new Drained(t.Id, Closure.Open) { At = FloorApp.Ago(18) },
                    ],
                NothingToType
            ),
            ["triggered"] = new(SomeTanks.Conical, t => [Found(t, Soil.Clean)], v => v.ChooseAsync("By", "Rust seen")),
            ["exposed"] = new(
                SomeTanks.PlasticConical,
                t => [Found(t, Soil.Clean)],
                async v =>
                {
                    await v.ChooseAsync("Kind", "Allergen");
                    await v.TypeAsync("What", "lactose");
                }
            ),
            ["cleared"] = new(
                SomeTanks.Conical,
                t => [Found(t, Soil.Clean) with { ExposedTo = [ExposureKind.Allergen] }],
                v => v.ChooseAsync("Kind", "Allergen")
            ),
        };

    private static Dictionary<string, FormCase> States() =>
        new(StringComparer.Ordinal)
        {
            ["tank-taken-over"] = new(
                SomeTanks.Conical,
                _ => [],
                async v =>
                {
                    await v.ChooseAsync("How the tank is", "Clean");
                    await v.ChooseAsync("Gas in it", "Air");
                    await v.TypeAsync("Air-dried on", "2026-06-01");
                }
            ),
            ["opened"] = new(SomeTanks.Conical, t => [Found(t, Soil.Clean)], v => v.TypeAsync("What", "lid")),
            ["closed"] = new(
                SomeTanks.Conical,
                t => [Found(t, Soil.Clean)],
                v => v.ChooseAsync("How it is shut", "Closed, no pressure")
            ),
            ["vented"] = new(
                SomeTanks.PressureRated,
                t => [Found(t, Soil.Clean) with { Closure = Closure.Sealed }],
                NothingToType
            ),
            ["purged"] = new(
                SomeTanks.PressureRated,
                t => [Found(t, Soil.Clean)],
                v => v.TypeAsync("Tank volumes of gas", "5")
            ),
            ["out-of-service"] = new(
                SomeTanks.Bucket,
                t => [Found(t, Soil.Clean)],
                v => v.TypeAsync("Why", "Cracked tap")
            ),
            ["back-in-service"] = new(
                SomeTanks.Bucket,
                t => [Found(t, Soil.Clean), new PutOutOfService(t.Id, "Cracked tap") { At = FloorApp.Ago(9) }],
                v => v.TypeAsync("Why", "New tap")
            ),
            ["noted"] = new(SomeTanks.Bucket, t => [Found(t, Soil.Clean)], v => v.TypeAsync("Note", "The tap sticks")),
            ["allowed"] = new(
                SomeTanks.Conical,
                t => [Found(t, Soil.Clean)],
                async v =>
                {
                    await v.ChooseAsync("Kind", "Fill");
                    await v.TickAsync("Not sanitized");
                    await v.TypeAsync("Why", "Boiled wort straight in");
                }
            ),
        };

    private static Dictionary<string, FormCase> Beer() =>
        new(StringComparer.Ordinal)
        {
            ["fill-planned"] = new(
                SomeTanks.Conical,
                t => [Found(t, Soil.Clean)],
                async v =>
                {
                    await v.TypeAsync("Fill planned for", LocalIn(48));
                    await v.TypeAsync("Volume", "90", "L");
                    await v.TypeAsync("Name of the beer", "Market-day stout");
                }
            ),
            ["filled"] = new(
                SomeTanks.Conical,
                t => [Found(t, Soil.Sanitized, hoursAgo: 1)],
                async v =>
                {
                    await v.TypeAsync("Volume", "100", "L");
                    await v.TypeAsync("Name of the beer", "Market-day stout");
                    await v.TypeAsync("Gravity", "1.058", "SG");
                }
            ),
            ["topped-up"] = new(SomeTanks.Conical, Fermenting, v => v.TypeAsync("Volume", "2", "L")),
            ["batch-taken-over"] = new(
                SomeTanks.PlasticConical,
                _ => [],
                async v =>
                {
                    await v.TypeAsync("Name of the beer", "The one that was there");
                    await v.TypeAsync("Volume", "40", "L");
                    await v.TypeAsync("Gravity", "1.012", "SG");
                }
            ),
            ["racked"] = new(
                SomeTanks.Conical,
                Finished,
                async v =>
                {
                    await v.ChooseAsync("To tank", "B9");
                    await v.TypeAsync("Volume", "90", "L");
                    await v.TypeAsync("Left behind", "6", "L");
                }
            ),
            ["packaged"] = new(
                SomeTanks.Conical,
                Finished,
                async v =>
                {
                    await v.TypeAsync("Volume", "95", "L");
                    await v.ChooseAsync("Kind", "Keg");
                    await v.TypeAsync("Size of one", "19", "L");
                    await v.TypeAsync("How many", "5");
                    await v.TickAsync("Purged of air");
                }
            ),
            ["discarded"] = new(
                SomeTanks.Conical,
                Finished,
                async v =>
                {
                    await v.TypeAsync("Volume", "96", "L");
                    await v.TypeAsync("Why", "Sour");
                }
            ),
            ["emptied"] = new(SomeTanks.Conical, Finished, v => v.TypeAsync("Heel left in the tank", "0.5", "L")),
            ["dumped"] = new(
                SomeTanks.Conical,
                Finished,
                async v =>
                {
                    await v.ChooseAsync("What", "Yeast");
                    await v.TypeAsync("Volume", "1.2", "L");
                }
            ),
            ["dry-hopped"] = new(
                SomeTanks.Conical,
                Finished,
                async v =>
                {
                    await v.TypeAsync("Material", "Whole cones");
                    await v.TypeAsync("How much", "300", "g");
                    await v.ChooseAsync("How", "Through an opening");
                }
            ),
        };

    private static Dictionary<string, FormCase> Readings() =>
        new(StringComparer.Ordinal)
        {
            ["gravity"] = new(
                SomeTanks.Conical,
                Fermenting,
                async v =>
                {
                    await v.TypeAsync("Gravity", "8,5", "°P");
                    await v.ChooseAsync("Read with", "Density meter");
                }
            ),
            ["ph"] = new(SomeTanks.Conical, Fermenting, v => v.TypeAsync("pH", "4.4")),
            ["temperature"] = new(SomeTanks.Conical, Fermenting, v => v.TypeAsync("Temperature", "66", "°F")),
            ["pressure"] = new(
                SomeTanks.PressureRated,
                Fermenting,
                v => v.TypeAsync("Pressure, as the gauge reads", "0.4", "bar")
            ),
            ["level-measured"] = new(SomeTanks.Conical, Fermenting, v => v.TypeAsync("Volume", "95", "L")),
            ["temperature-set"] = new(SomeTanks.Conical, Fermenting, v => v.TypeAsync("Temperature", "19", "°C")),
            ["pressure-set"] = new(
                SomeTanks.PressureRated,
                Fermenting,
                v => v.TypeAsync("Pressure, as the gauge reads", "0.8", "bar")
            ),
        };

    private static Dictionary<string, FormCase> Parts() =>
        new(StringComparer.Ordinal)
        {
            ["parts-seen"] = new(
                WithAPort,
                t => [Found(t, Soil.Clean)],
                async v =>
                {
                    await v.ChooseAsync("Part", "Thermowell");
                    await v.ChooseAsync("The part's clamp", "1 1/2 in · 50.5 mm");
                }
            ),
            ["parts-off"] = new(
                SomeTanks.Conical,
                t => [Found(t, Soil.Clean)],
                v => v.TypeAsync("Which parts", "sample valve")
            ),
            ["refitted"] = new(
                SomeTanks.Conical,
                t => [Found(t, Soil.Clean), new PartsTakenOff(t.Id, "sample valve") { At = FloorApp.Ago(9) }],
                v => v.TypeAsync("Which parts", "sample valve")
            ),
            ["leak-tested"] = new(
                SomeTanks.Conical,
                t => [Found(t, Soil.Clean)],
                v => v.ChooseAsync("Result", "Passed")
            ),
            ["gasket-changed"] = new(
                SomeTanks.Conical,
                t => [Found(t, Soil.Clean)],
                v => v.TypeAsync("What", "lid gasket")
            ),
            ["relief-valve-tested"] = new(
                SomeTanks.PressureRated,
                t => [Found(t, Soil.Clean)],
                async v =>
                {
                    await v.ChooseAsync("Result", "Passed");
                    await v.TypeAsync("It opened at", "1.38", "bar");
                }
            ),
            ["pressure-tested"] = new(
                SomeTanks.PressureRated,
                t => [Found(t, Soil.Clean)],
                async v =>
                {
                    await v.ChooseAsync("Result", "Passed");
                    await v.TypeAsync("Pressure, as the gauge reads", "1.5", "bar");
                }
            ),
            ["probe-calibrated"] = new(
                SomeTanks.Conical,
                t => [Found(t, Soil.Clean)],
                async v =>
                {
                    await v.TypeAsync("What", "thermometer");
                    await v.ChooseAsync("Result", "Passed");
                    await v.TypeAsync("It was off by", "0,2");
                }
            ),
        };

    private static Dictionary<string, FormCase> Yeast() =>
        new(StringComparer.Ordinal)
        {
            ["pitched"] = new(
                SomeTanks.Conical,
                t => [Found(t, Soil.Sanitized, 6), Fill(t, Guid.CreateVersion7(), 5)],
                v => v.TypeAsync("Other yeast, in words", "Two packs from a neighbour")
            ),
            ["harvested"] = new(
                SomeTanks.Conical,
                Finished,
                async v =>
                {
                    await v.TypeAsync("Strain", "House ale");
                    await v.TypeAsync("Volume", "500", "mL");
                    await v.TypeAsync("Kept at", "3", "°C");
                }
            ),
            ["culture-received"] = new(
                SomeTanks.Bucket,
                _ => [],
                async v =>
                {
                    await v.TypeAsync("Strain", "Received on a Tuesday");
                    await v.ChooseAsync("Kind", "Dry pack");
                    await v.TypeAsync("or in grams", "500", "g");
                }
            )
            {
                BringsCulture = true,
                Shows = "Received on a Tuesday",
            },
            ["culture-taken-over"] = new(
                SomeTanks.Bucket,
                _ => [],
                async v =>
                {
                    await v.TypeAsync("Strain", "Found in the fridge");
                    await v.ChooseAsync("Kind", "Slurry");
                    await v.TypeAsync("How much", "700", "mL");
                    await v.TypeAsync("Generation, at least", "3");
                }
            )
            {
                BringsCulture = true,
                Shows = "Found in the fridge",
            },
            ["counted"] = new(
                SomeTanks.Bucket,
                _ => [],
                async v =>
                {
                    await v.TypeAsync("Living cells", "210");
                    await v.TypeAsync("Dead cells", "14");
                    await v.TypeAsync("Diluted, times", "100");
                }
            )
            {
                IsAboutCulture = true,
            },
            ["culture-discarded"] = new(SomeTanks.Bucket, _ => [], v => v.TypeAsync("Why", "Smells of eggs"))
            {
                IsAboutCulture = true,
            },
            ["item-received"] = new(SomeTanks.Bucket, _ => [], v => v.TypeAsync("How much", "20"))
            {
                IsAboutItem = true,
            },
            ["item-counted"] = new(SomeTanks.Bucket, _ => [], v => v.TypeAsync("How much", "7")) { IsAboutItem = true },
            ["item-used"] = new(SomeTanks.Bucket, _ => [], v => v.TypeAsync("How much", "2")) { IsAboutItem = true },
            ["item-discarded"] = new(
                SomeTanks.Bucket,
                _ => [],
                async v =>
                {
                    await v.TypeAsync("How much", "1");
                    await v.TypeAsync("Why", "Torn");
                }
            )
            {
                IsAboutItem = true,
            },
        };

    private static Tank WithAPort(Guid id, string code) =>
        SomeTanks.Conical(id, code) with
        {
            Ports = [new(1, "Thermowell", PortPlace.Side) { Clamp = Brewing.Tanks.Clamp.OneAndAHalfInch }],
        };

    private static async Task WashAsync(Visit visit)
    {
        await visit.ChooseAsync("Cleaner", "Alkaline cleaner");
        await visit.ChooseAsync("How", "Spray ball");
        await visit.TypeAsync("Temperature", "55", "°C");
        await visit.TypeAsync("Contact", "30", "min");
    }

    private static LogEntry[] Fermenting(Tank tank)
    {
        var batch = Guid.CreateVersion7();
        return
        [
            Found(tank, Soil.Sanitized, 31),
            Fill(tank, batch, 30),
            Pitch(tank, batch, 29),
            Gravity(tank, batch, 1.040, 6),
        ];
    }

    private static LogEntry[] Finished(Tank tank)
    {
        var batch = Guid.CreateVersion7();
        return
        [
            Found(tank, Soil.Sanitized, 301),
            Fill(tank, batch, 300),
            Pitch(tank, batch, 299),
            Gravity(tank, batch, 1.010, 80),
            Gravity(tank, batch, 1.010, 26),
        ];
    }

    private static string LocalIn(double hours) =>
        TimeZoneInfo
            .ConvertTime(FloorApp.Now.AddHours(hours), TimeZoneInfo.FindSystemTimeZoneById("Europe/Berlin"))
            .ToString("yyyy-MM-dd'T'HH:mm", System.Globalization.CultureInfo.InvariantCulture);
}
