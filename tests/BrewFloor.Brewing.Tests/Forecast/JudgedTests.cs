using BrewFloor.Brewing.Forecast;

namespace BrewFloor.Brewing.Tests.Forecast;

/// <summary>The forecast against 1,250 batches of another model; it was set on other batches of that model.</summary>
public class JudgedTests(ITestOutputHelper output)
{
    private const int Batches = 1250;

    private const int Sensors = 300;

    private static readonly double[] Shares = [1.0 / 3, 2.0 / 3, 0.97];

    private static readonly string[] Quantities = ["final gravity, °P", "time to it, h", "gravity in 24 h, °P"];

    private static readonly List<Judged> All = Judge(Batches, sensorEvery: null);

    [Fact]
    public void Four_of_five_bands_hold_the_truth_and_simple_guesses_are_further_off()
    {
        HoldsIn(All);

        Assert.All(All, row => Assert.True(row.Batches >= 500, row.ToString()));
    }

    [Fact] // 40 to 500 readings a batch, as a floating sensor sends them
    public void Nor_are_the_bands_too_narrow_when_a_sensor_reads_every_hour() =>
        HoldsIn(Judge(Sensors, sensorEvery: 1));

    private void HoldsIn(List<Judged> table)
    {
        output.WriteLine(
            "quantity               at batches  in 80  in 95    error     last     line  80-wide\n"
                + string.Join('\n', table)
        );

        Assert.All(table, row => Assert.InRange(row.In80, 72, 88));
        Assert.All(table, row => Assert.InRange(row.In95, 85, 99));
        Assert.All(table, row => Assert.True(row.Error < row.LastValue && row.Error < row.Line, row.ToString()));
    }

    private static List<Judged> Judge(int batches, double? sensorEvery)
    {
        var table = Shares.SelectMany((_, i) => Quantities.Select(q => new Judged(q, i + 1))).ToList();
        foreach (var batch in Enumerable.Range(1, batches).Select(seed => new SimulatedBatch(seed, sensorEvery)))
        {
            for (var i = 0; i < Shares.Length; i++)
            {
                var until = batch.TimeTo(batch.Original - (Shares[i] * (batch.Original - batch.Final)));
                var readings = batch.Readings.TakeWhile(r => r.After.TotalHours <= until).ToArray();
                if (readings.Length is >= 4 and <= 500)
                {
                    Add(batch, readings, table.GetRange(3 * i, 3));
                }
            }
        }

        return table;
    }

    private static void Add(SimulatedBatch batch, GravityReading[] readings, List<Judged> rows)
    {
        var prior = batch.Prior();
        var outlook = Outlook.From(prior, readings, readings[^1].After).Value;

        var (now, last) = (readings[^1].After.TotalHours, readings[^1].Extract.Value);
        var (at, slope) = Line(readings);
        var end = Math.Max(batch.Expected, at + (24 * slope)); // a day on, but no lower than expected
        var done = slope < 0 ? now + Math.Max(0, (batch.Expected + 0.2 - at) / slope) : 1000;
        rows[0].Add(outlook.Final.Select(p => p.Value), batch.Final, last, end);
        rows[1].Add(outlook.Done.Select(t => t.TotalHours), batch.TimeTo(batch.Final + 0.2), now, done);
        rows[2].Add(outlook.InADay.Select(p => p.Value), batch.At(now + 24), last, at + (24 * slope));
    }

    // A straight line through the last three: its value at the last of them, and its slope in an hour.
    private static (double At, double Slope) Line(GravityReading[] readings)
    {
        var three = readings.TakeLast(3).ToArray();
        var (mt, my) = (three.Average(r => r.After.TotalHours), three.Average(r => r.Extract.Value));
        var slope =
            three.Sum(r => (r.After.TotalHours - mt) * (r.Extract.Value - my))
            / three.Sum(r => Math.Pow(r.After.TotalHours - mt, 2));
        return (my + (slope * (three[^1].After.TotalHours - mt)), slope);
    }
}
