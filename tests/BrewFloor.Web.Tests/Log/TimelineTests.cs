using System.Net;
using BrewFloor.Domain.People;
using BrewFloor.Web.Tests.Api;

namespace BrewFloor.Web.Tests.Log;

public sealed class TimelineTests(FloorApp app) : IClassFixture<FloorApp>
{
    [Theory]
    [InlineData(10, "Sent by a clock 10")]
    [InlineData(-45, "Sent by a clock 45")]
    [InlineData(1, null)] // nobody minds a minute
    public async Task A_clock_that_is_far_off_is_said_on_the_line_it_dated(int minutes, string? said)
    {
        var code = $"S{Math.Abs(minutes)}";
        await app.TankAsync(code);
        var sent = TimeProvider.System.GetUtcNow().AddMinutes(minutes);
        var note = Talk.Note(code, "The jacket drips");
        note["at"] = sent.AddMinutes(-5);
        note["sent_at"] = sent;
        var phone = await app.WithTokenAsync("log");

        await (await phone.SendAsync(note)).HearAsync(HttpStatusCode.OK);

        using var browser = app.As(Role.Viewer);
        var page = await browser.GetStringAsync($"/tanks/{code}", FloorApp.Stop);
        Assert.Contains("The jacket drips", page, StringComparison.Ordinal);
        Assert.Equal(said is not null, page.Contains(said ?? "Sent by a clock", StringComparison.Ordinal));
    }
}
