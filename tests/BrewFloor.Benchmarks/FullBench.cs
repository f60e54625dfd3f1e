using System.Globalization;
using System.Text;
using System.Text.Json;
using BrewFloor.Benchmarks.Drills;
using BrewFloor.Benchmarks.Measuring;
using BrewFloor.Domain.Log;
using BrewFloor.Store;
using BrewFloor.Store.House;
using BrewFloor.Store.Log;

namespace BrewFloor.Benchmarks;

/// <summary>The measurements, from the command line: baseline and subject in one run, one client, medians.</summary>
internal static class FullBench
{
    private const int Short = 20_000;
    private const int Long = 2_000_000;
    private const int Tanks = 200;
    private const int Times = 600;

    private static readonly Dictionary<
        string,
        Func<BenchServer, CancellationToken, Task<IReadOnlyList<Measured>>>
    > All = new(StringComparer.Ordinal)
    {
        ["append"] = AppendAsync,
        ["floor"] = FloorAsync,
        ["past"] = PastAsync,
        ["growth"] = GrowthAsync,
        ["start"] = static (_, stop) => StartBench.RunAsync(stop),
        ["science"] = static (_, _) => ScienceBench.RunAsync(),
    };

    public static async Task<int> RunAsync(string[] words)
    {
        if (words is [var first, ..] && !All.ContainsKey(first))
        {
            await Console.Error.WriteLineAsync(
                $"No measurement is called {first}; there are {string.Join(", ", All.Keys)}."
            );
            return 2;
        }

        var stop = CancellationToken.None;
        List<Measured> all = [];
        await using (var server = await BenchServer.StartAsync(stop))
        {
            foreach (var (name, bench) in All.Where(b => words is [] || words.Contains(b.Key)))
            {
                Console.WriteLine($"{name} (load {Machine.Load}) ...");
                var measured = await bench(server, stop);
                Keep(name, measured);
                all.AddRange(measured);
                Console.Write(Table(measured));
            }
        }

        if (words is [])
        {
            await PerformancePage.WriteAsync(PublishedApp.Root, Table(all), stop);
        }

        return all.TrueForAll(m => m.IsMet) ? 0 : 1;
    }

    private static async Task<IReadOnlyList<Measured>> AppendAsync(BenchServer server, CancellationToken stop)
    {
        var floor = await server.FloorAsync(Tanks, Short, stop);
        await using var bench = new AppendBench(floor);
        await bench.PrepareAsync(stop);
        await bench.AppendAsync();
        await bench.DemandSameRowsAsync();
        return
        [
            Measured.Ratio(
                "a reading appended / the same statements bare",
                await Round.InTurnsAsync(bench.BareAsync, bench.AppendAsync, Times),
                3
            ),
        ];
    }

    private static async Task<IReadOnlyList<Measured>> FloorAsync(BenchServer server, CancellationToken stop)
    {
        await using var page = await FloorPageBench.StartAsync(await server.FloorAsync(Tanks, Short, stop));
        var round = await Round.InTurnsAsync(page.BareAsync, page.PageAsync, Times / 2);
        return
        [
            Measured.Ratio(
                $"floor page of {Tanks} tanks / a bare endpoint with its cookie, rows and {page.Bytes / 1024} KB",
                round,
                5
            ),
        ];
    }

    private static async Task<IReadOnlyList<Measured>> GrowthAsync(BenchServer server, CancellationToken stop)
    {
        var (few, many) = (await server.FloorAsync(Tanks, Short, stop), await server.FloorAsync(Tanks, Long, stop));
        await using var appendFew = new AppendBench(few);
        await using var appendMany = new AppendBench(many);
        await appendFew.PrepareAsync(stop);
        await appendMany.PrepareAsync(stop);
        var append = await Round.InTurnsAsync(appendFew.AppendAsync, appendMany.AppendAsync, Times);
        await using var pageFew = await FloorPageBench.StartAsync(few);
        await using var pageMany = await FloorPageBench.StartAsync(many);
        var page = await Round.InTurnsAsync(pageFew.PageAsync, pageMany.PageAsync, Times / 2);
        return
        [
            Measured.Ratio($"a reading appended, {Long:N0} entries / {Short:N0}", append, 1.2),
            Measured.Ratio($"floor page, {Long:N0} entries / {Short:N0}", page, 1.2),
        ];
    }

    private static async Task<IReadOnlyList<Measured>> PastAsync(BenchServer server, CancellationToken stop)
    {
        var floor = await server.FloorAsync(1, Short, stop);
        await using var database = StoreSetup.DataSource(floor.Connections.Application);
        var reader = new FloorReader(database, new RulesOnHand());
        var worst = floor.Generator.Entries().ElementAt(Short - 2).At; // the last of 199 after the snapshot
        var tank = Subject.Tank(floor.Generator.Tanks[0].Id);
        var took = await Round.MedianAsync(
            async () => await reader.AsItWasAsync(tank, worst, known: null, stop),
            Times / 2
        );
        return [new($"a tank of {Short:N0} entries as it was, 199 after a snapshot", took, 20, "ms")];
    }

    private static void Keep(string name, IReadOnlyList<Measured> measured)
    {
        var folder = Directory.CreateDirectory(Path.Combine(PublishedApp.Root, "artifacts", "bench")).FullName;
        var kept = new
        {
            At = TimeProvider.System.GetUtcNow(),
            Machine = Machine.Words,
            Machine.Load,
            Measured = measured,
        };
        File.WriteAllText(Path.Combine(folder, $"{name}.json"), JsonSerializer.Serialize(kept, Json));
    }

    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web) { WriteIndented = true };

    private static string Table(IEnumerable<Measured> measured)
    {
        var table = new StringBuilder("| what | measured | at most | |\n| --- | ---: | ---: | --- |\n");
        foreach (var m in measured)
        {
            var both = m is { BaselineMs: { } bare, SubjectMs: { } ours }
                ? string.Create(CultureInfo.InvariantCulture, $" ({ours:0.00} / {bare:0.00} ms)")
                : "";
            table.Append(
                CultureInfo.InvariantCulture,
                $"| {m.What} | {m.Value:0.00} {m.Unit}{both} | {m.Limit:0.##} {m.Unit} | {(m.IsMet ? "met" : "MISSED")} |\n"
            );
        }

        return table.ToString();
    }
}
