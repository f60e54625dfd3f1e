using System.Globalization;
using BrewFloor.Brewing;
using BrewFloor.Brewing.Tanks;
using BrewFloor.Web.Log;
using BrewFloor.Web.Shell;
using BrewFloor.Web.Units;
using UnitsNet;

namespace BrewFloor.Web.Tanks;

/// <summary>The dip table of a tank as it is typed: levels, and what the tank holds there, by volume or weighed.</summary>
internal static class TankDips
{
    private const int TableRows = 8;
    private const int FreeRows = 2;

    private const int MostRows = 500; // ours: more marks than anybody weighs in

    // Where nobody typed one; 0.2 % off at 4 °C.
    private static readonly Temperature UsualWater = Temperature.FromDegreesCelsius(20);

    public static IEnumerable<Field> Fields(Wording words, IReadOnlyList<DipPoint> dips) =>
        [
            new RowsField(
                "dips",
                [new QuantityField("level", Measure.Level), new QuantityField("volume", Measure.WaterIn)],
                Math.Max(TableRows, dips.Count + FreeRows)
            )
            {
                Starts = [.. dips.Select(dip => Start(words, dip))],
                IsExtra = dips.Count == 0,
                Hint = "hint.dips",
            },
            new QuantityField("water-temperature", Measure.Temperature)
            {
                IsExtra = dips.Count == 0,
                Hint = "hint.water-temperature",
            },
        ];

    /// <summary>The rows that were typed; half of one is asked again under the field that lacks.</summary>
    public static IEnumerable<DipPoint> Read(FormReader said)
    {
        for (var row = 0; row < MostRows; row++)
        {
            var (level, volume) = ($"dips.{row}.level", $"dips.{row}.volume");
            if (!said.IsBegun(level, volume))
            {
                continue;
            }

            var height = said.Level(level);
            if (WaterIn(said, volume) is { } water)
            {
                yield return new DipPoint(height, water);
            }
            else if (!said.IsBegun(volume))
            {
                said.Refuse(volume, new Refusal("missing", volume, "", ""));
            }
        }
    }

    // By volume, or weighed: then at the temperature of the water.
    private static Volume? WaterIn(FormReader said, string name)
    {
        if (!UnitSymbols.Masses.ContainsKey(said.Text(name + ".unit")))
        {
            return said.LitresOrNone(name);
        }

        if (said.GramsOrNone(name) is not { } weighed)
        {
            return null;
        }

        var litres = WeighedDips.VolumeOf(weighed, said.DegreesOrNone("water-temperature") ?? UsualWater);
        if (litres.Gives(out var volume))
        {
            return volume;
        }

        said.Refuse("water-temperature", litres.Refusal!);
        return null;
    }

    private static string?[] Start(Wording words, DipPoint dip) =>
        [Text(dip.Level.As(words.Figures.Units.Length)), Text(dip.Volume.As(words.Figures.Units.Volume))];

    private static string Text(double value) => value.ToString("0.###", CultureInfo.InvariantCulture);
}
