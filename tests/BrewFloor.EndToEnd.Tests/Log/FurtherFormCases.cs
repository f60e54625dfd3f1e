using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.EndToEnd.Tests.House;
using static BrewFloor.EndToEnd.Tests.House.SomeEntries;
using static BrewFloor.EndToEnd.Tests.Log.FormCases;

namespace BrewFloor.EndToEnd.Tests.Log;

/// <summary>The cases of readings, parts and yeast.</summary>
internal static class FurtherFormCases
{
    public static Dictionary<string, FormCase> Readings() =>
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

    public static Dictionary<string, FormCase> Parts() =>
        new(StringComparer.Ordinal)
        {
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

    public static Dictionary<string, FormCase> Yeast() =>
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
        };
}
