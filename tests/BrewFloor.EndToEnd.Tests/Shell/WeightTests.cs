using System.IO.Compression;
using System.Text.Json;
using BrewFloor.EndToEnd.Tests.House;

namespace BrewFloor.EndToEnd.Tests.Shell;

/// <summary>The demo's floor on a phone that has never seen it: what comes over the wire, and how it looks.</summary>
public sealed class WeightTests(DemoApp demo) : IClassFixture<DemoApp>
{
    private const int Most = 60 * 1024;

    [Theory]
    [InlineData("/")]
    [InlineData("/jobs")]
    public async Task A_page_of_the_floor_weighs_60_KB_at_most_when_it_is_opened_for_the_first_time(string path)
    {
        await using var bert = await demo.VisitAsync(Screen.Phone);
        var wire = await bert.Page.Context.NewCDPSessionAsync(bert.Page);
        var (names, weights) = (new Dictionary<string, string>(StringComparer.Ordinal), new List<(string, double)>());
        wire.Event("Network.responseReceived").OnEvent += (_, said) =>
            names[Id(said)] = said!.Value.GetProperty("response").GetProperty("url").GetString()!;
        wire.Event("Network.loadingFinished").OnEvent += (_, said) =>
            weights.Add((names[Id(said)], said!.Value.GetProperty("encodedDataLength").GetDouble()));
        await wire.SendAsync("Network.enable");

        await bert.Page.GotoAsync(path, new() { WaitUntil = Microsoft.Playwright.WaitUntilState.Load });
        await bert.Page.EvaluateAsync("() => document.fonts.ready.then(() => true)");

        for (var i = 0; i < weights.Count; i++)
        {
            if (
                weights[i].Item1.EndsWith(".css", StringComparison.Ordinal)
                || weights[i].Item1.EndsWith(".js", StringComparison.Ordinal)
            )
            {
                weights[i] = (weights[i].Item1, await PublishedAsync(bert, weights[i].Item1));
            }
        }

        var listed = string.Join('\n', weights.Select(one => $"{one.Item2, 8:0} {one.Item1}"));
        TestContext.Current.SendDiagnosticMessage("{0}", listed);
        Assert.Contains(weights, one => one.Item1.Contains("woff2", StringComparison.Ordinal));
        Assert.True(weights.Sum(one => one.Item2) <= Most, listed);
    }

    [Fact]
    public async Task Pictures_for_the_readme_are_taken()
    {
        await using var phone = await demo.VisitAsync(Screen.Phone);
        await phone.OpenAsync("/");
        await phone.ShotAsync("floor-phone", whole: false);
        await phone.OpenAsync("/tanks/K1");
        await phone.ShotAsync("tank-phone", whole: false);
        await phone.Page.ClickAsync("main [href^='batches/']");
        await phone.ShotAsync("batch-phone", whole: false);
        await phone.OpenAsync("/calculators/spunding");
        await phone.ShotAsync("calculator-phone", whole: false);
        await using var desk = await demo.VisitAsync(Screen.Desk);
        await desk.OpenAsync("/");
        await desk.ShotAsync("floor-desk", whole: false);

        Assert.All(
            ["floor-phone", "tank-phone", "batch-phone", "calculator-phone", "floor-desk"],
            name => Assert.True(new FileInfo(Path.Combine(Shots.Folder, name + ".png")).Length > 10_000)
        );
    }

    // From the source tree it comes as it is; a published app sends it packed beforehand, as here, with its headers.
    private static async Task<double> PublishedAsync(Visit bert, string address)
    {
        const int Headers = 700;
        var answer = await bert.Page.APIRequest.GetAsync(address);
        using var packed = new MemoryStream();
        await using (var packing = new BrotliStream(packed, CompressionLevel.SmallestSize, leaveOpen: true))
        {
            await packing.WriteAsync(await answer.BodyAsync(), TestContext.Current.CancellationToken);
        }

        return packed.Length + Headers;
    }

    private static string Id(JsonElement? said) => said!.Value.GetProperty("requestId").GetString()!;
}
