using System.Text;
using BrewFloor.EndToEnd.Tests.House;
using Microsoft.Playwright;

namespace BrewFloor.EndToEnd.Tests.Spreadsheets;

/// <summary>A club brings its list of tanks, in a browser with and without script.</summary>
public sealed class ImportTests(FloorApp floor) : IClassFixture<FloorApp>
{
    // Two columns are called what only this club calls them, no unit stands above the volumes, and one row is wrong.
    private static readonly string[] Ours =
    [
        "Tank;Sort;Made of;Max temp;Litres or so;Inner dia (mm);Shell height (mm);Bottom;Cone angle;State;Closure",
        "%1;CCT;304;85;120;520;620;cone;60;dirty;vented",
        "%2;CCT;304;85;120,5;520;620;cone;60;dirty;vented",
        "%3;unitank;304;85;120;520;620;cone;60;clean;vented",
        "%4;BBT;304;85;118;520;620;flat;;sanitised;closed",
        "%5;CCT;304;85;900;520;620;cone;60;dirty;vented",
    ];

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData(true, "Q")]
    [InlineData(false, "R")]
    public async Task Five_tanks_with_one_bad_row_are_matched_looked_at_added_and_taken_back(
        bool hasScript,
        string letter
    )
    {
        string[] codes = [.. Enumerable.Range(1, 5).Select(number => letter + number)];
        await using var ben = await floor.VisitAsync(FloorApp.Brewer, Screen.Phone with { HasScript = hasScript });
        await ben.OpenAsync("/more");
        await ben.PressAsync("Bring your spreadsheet");
        await ben.Page.GetByLabel("The file", new() { Exact = true }).SetInputFilesAsync(File(letter));
        await ben.PressAsync("Read it");
        await ben.SeesAsync("Will be added: 0. Already there: 0. Can't be: 5.");
        await ben.ShotIfWantedAsync($"import-guessed-{letter}");

        await ben.ChooseAsync("Sort", "Type");
        await ben.ChooseAsync("Litres or so", "Filled on an ordinary day up to");
        await ben.PressAsync("Use this");

        await ben.SeesAsync("Will be added: 4. Already there: 0. Can't be: 1.");
        await ben.SeesAsync("The working volume must be");
        await ben.ShotIfWantedAsync($"import-matched-{letter}");
        await LookOverAsync(ben, hasScript);
        Assert.Empty(await ThereAsync(codes));

        await ben.PressAsync("Add 4, leave out 1 that can't be");
        await ben.SeesAsync("Rows added: 4");
        Assert.Equal(codes[..4], await ThereAsync(codes));
        await ben.ShotIfWantedAsync($"import-done-{letter}");
        var page = new Uri(ben.Page.Url).PathAndQuery;
        await ben.PressAsync("To the floor");
        foreach (var code in codes[..4])
        {
            await ben.SeesAsync(code);
        }

        await ben.OpenAsync(page);
        await ben.PressAsync("Take the whole import back");
        await ben.SeesAsync("Imported and taken back");
        Assert.Empty(await ThereAsync(codes));
        await LookOverAsync(ben, hasScript);
    }

    // What examines a page is a script itself.
    private static Task LookOverAsync(Visit ben, bool hasScript) =>
        hasScript ? Violations.NoneAsync(ben) : Task.CompletedTask;

    private static FilePayload File(string letter) =>
        new()
        {
            Name = "our tanks.csv",
            MimeType = "text/csv",
            Buffer = Encoding.UTF8.GetBytes(string.Join("\r\n", Ours).Replace("%", letter, StringComparison.Ordinal)),
        };

    private async Task<string[]> ThereAsync(string[] codes) =>
        [
            .. (await floor.Reader.FloorAsync(Stop))
                .Floor.Tanks.Select(tank => tank.Thing.Code)
                .Where(codes.Contains)
                .Order(StringComparer.Ordinal),
        ];
}
