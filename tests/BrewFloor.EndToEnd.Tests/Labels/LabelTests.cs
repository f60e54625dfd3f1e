using System.Text;
using System.Text.RegularExpressions;
using BrewFloor.EndToEnd.Tests.House;

namespace BrewFloor.EndToEnd.Tests.Labels;

/// <summary>From the owner's address to a phone held before a tank.</summary>
public sealed class LabelTests(FloorApp floor) : IClassFixture<FloorApp>, IAsyncLifetime
{
    private const int Labels = 11; // one more than a sheet takes

    public async ValueTask InitializeAsync()
    {
        for (var i = 1; i <= Labels && floor.Author(FloorApp.Owner) is not null; i++)
        {
            if (await floor.Reader.TankAsync($"K{i}", TestContext.Current.CancellationToken) is null)
            {
                await floor.AddTankAsync(i % 2 == 0 ? SomeTanks.Conical : SomeTanks.Bucket, $"K{i}");
            }
        }
    }

    public ValueTask DisposeAsync() => ValueTask.CompletedTask;

    [Theory]
    [InlineData(true, "dark")]
    [InlineData(false, "light")]
    public async Task The_owner_says_the_address_and_every_printed_code_opens_its_tank(bool hasScript, string theme)
    {
        var screen = Screen.Desk with { HasScript = hasScript, Theme = theme, Dots = 4 };
        await using var olga = await floor.VisitAsync(FloorApp.Owner, screen);
        await olga.OpenAsync("/settings/address");
        await olga.TypeAsync("Address of this floor", "the brewery");
        await olga.PressAsync("Save");
        await olga.SeesAsync("It begins with http://");
        await olga.TypeAsync("Address of this floor", floor.Address);
        await olga.PressAsync("Save");
        await olga.PressAsync("Show the labels");
        await olga.ShotIfWantedAsync($"labels-{theme}");

        var labels = await olga.Page.Locator(".label").AllAsync();
        Assert.Equal(Labels, labels.Count);
        foreach (var label in labels)
        {
            var code = await label.Locator(".code").InnerTextAsync();
            Assert.Equal($"{floor.Address}/tanks/{code}", Scan.Read(await label.Locator(".qr").ScreenshotAsync()));
        }

        var read = Scan.Read(await labels[0].Locator(".qr").ScreenshotAsync());
        await olga.OpenAsync(read!);
        Assert.Equal("K1", await olga.Page.Locator("h1 .plate").InnerTextAsync());
    }

    [Fact]
    public async Task A_scratched_code_is_read_and_a_smeared_one_is_not()
    {
        await floor.AddressAsync("https://floor.example");
        await using var vera = await floor.VisitAsync(FloorApp.Viewer, Screen.Desk with { Dots = 2 });
        await vera.OpenAsync("/labels/print?tank=K1");
        var label = vera.Page.Locator(".label");

        await CoverAsync(vera, 2);
        Assert.Equal("https://floor.example/tanks/K1", Scan.Read(await label.Locator(".qr").ScreenshotAsync()));
        await CoverAsync(vera, 20);
        Assert.Null(Scan.Read(await label.Locator(".qr").ScreenshotAsync()));
    }

    [Theory]
    [InlineData("A4", 595, 842, 2)]
    [InlineData("Letter", 612, 792, 2)]
    [InlineData("Each", 283, 176, Labels)]
    public async Task A_sheet_is_as_large_as_its_paper_and_takes_ten_labels(
        string paper,
        int width,
        int height,
        int pages
    )
    {
        await floor.AddressAsync("https://floor.example");
        await using var vera = await floor.VisitAsync(FloorApp.Viewer, Screen.Desk);
        await vera.OpenAsync(
            $"/labels/print?paper={paper}&{string.Join('&', Enumerable.Range(1, Labels).Select(i => $"tank=K{i}"))}"
        );

        var pdf = Encoding.Latin1.GetString(await vera.Page.PdfAsync(new() { PreferCSSPageSize = true }));

        Assert.StartsWith("%PDF-", pdf, StringComparison.Ordinal);
        var sizes = Regex
            .Matches(pdf, @"/MediaBox \[0 0 (?<w>[\d.]+) (?<h>[\d.]+)\]", RegexOptions.ExplicitCapture, Patience)
            .Select(box => (Points(box, "w"), Points(box, "h")))
            .ToArray();
        Assert.Equal(Enumerable.Repeat((width, height), pages), sizes);
    }

    private static TimeSpan Patience => TimeSpan.FromSeconds(5);

    private static int Points(Match box, string side) =>
        (int)Math.Round(double.Parse(box.Groups[side].Value, System.Globalization.CultureInfo.InvariantCulture));

    // White over so many squares of it, in its middle.
    private static async Task CoverAsync(Visit visit, int squares) =>
        await visit.Page.EvaluateAsync(
            """
            squares => {
              const code = document.querySelector('.qr'), side = code.viewBox.baseVal.width;
              const from = (side - squares) / 2;
              code.insertAdjacentHTML('beforeend',
                `<rect x="${from}" y="${from}" width="${squares}" height="${squares}" fill="#fff"/>`);
            }
            """,
            squares
        );
}
