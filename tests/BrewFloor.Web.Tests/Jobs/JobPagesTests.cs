using System.Globalization;
using System.Net;
using BrewFloor.Domain.People;
using BrewFloor.Domain.Tanks;
using BrewFloor.Web.Shell;
using static BrewFloor.Store.Tests.Postgres.FreshFloor;

namespace BrewFloor.Web.Tests.Jobs;

/// <summary>Taking, giving back and putting off, as a browser without script does it.</summary>
public sealed class JobPagesTests(FloorApp app) : IClassFixture<FloorApp>
{
    private static int _tanks;

    [Fact]
    public async Task A_second_tap_on_a_job_does_not_give_it_back()
    {
        var job = await JobAsync();
        var helper = app.As(Role.Helper);

        await TakeAsync(helper, job, gives: false);
        await TakeAsync(helper, job, gives: false);

        Assert.Equal(app.Person(Role.Helper).Id, await TakerAsync(job));
        await TakeAsync(helper, job, gives: true);
        Assert.Null(await TakerAsync(job));
    }

    [Fact]
    public async Task What_somebody_does_is_not_taken_from_them()
    {
        var job = await JobAsync();
        await TakeAsync(app.As(Role.Helper), job, gives: false);

        await TakeAsync(app.As(Role.Brewer), job, gives: false);

        Assert.Equal(app.Person(Role.Helper).Id, await TakerAsync(job));
    }

    [Fact]
    public async Task A_brewer_frees_what_somebody_took_who_is_away_and_a_helper_does_not()
    {
        var job = await JobAsync();
        await TakeAsync(app.As(Role.Brewer), job, gives: false);

        await TakeAsync(app.As(Role.Helper), job, gives: true);
        Assert.Equal(app.Person(Role.Brewer).Id, await TakerAsync(job));

        await TakeAsync(app.As(Role.Owner), job, gives: true);
        Assert.Null(await TakerAsync(job));
    }

    [Theory]
    [InlineData(" ", "2026-12-01T08:00", "refusal.missing")]
    [InlineData("No caustic in the house", "2099-12-01T08:00", "job-until-far")]
    public async Task A_job_is_not_put_off_without_a_reason_nor_for_years(string why, string until, string said)
    {
        var job = await JobAsync();

        var answer = await app.As(Role.Helper)
            .SendFormAsync($"/jobs/{job}/put-off", "put-off", ("Input.Why", why), ("Input.Until", Soon(until)));

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        var wrong = (await answer.PageAsync()).QuerySelector(".wrong")!.TextContent;
        Assert.Equal(Reader.Stranger[said, new Domain.Log.Number("days", 90)], wrong);
        Assert.Equal(0L, await app.AskAsync<long>($"SELECT count(put_off_until) FROM jobs WHERE id = '{job}'"));
    }

    // A time that is to be accepted lies a day ahead, whenever the test runs.
    private static string Soon(string until) =>
        until.StartsWith("2099", StringComparison.Ordinal)
            ? until
            : TimeProvider.System.GetUtcNow().AddDays(1).ToString("yyyy-MM-ddTHH:mm", CultureInfo.InvariantCulture);

    private async Task<Guid> JobAsync()
    {
        var tank = await app.TankAsync($"J{Interlocked.Increment(ref _tanks)}");
        var batch = Guid.CreateVersion7();
        await app.AppendAsync(
            Fill(tank.Id, batch, at: Ago(5)),
            new Emptied(tank.Id, batch, Litres(1)) { Id = NewId(), At = Ago(3) }
        );
        return await app.AskAsync<Guid>(
            $"SELECT id FROM jobs WHERE subject_id = '{tank.Id}' AND rule = 'wash-soiled-tank'"
        );
    }

    private async Task<Guid?> TakerAsync(Guid job)
    {
        var taker = await app.AskAsync<Guid>(
            $"SELECT coalesce(taken_by, '00000000-0000-0000-0000-000000000000') FROM jobs WHERE id = '{job}'"
        );
        return taker == Guid.Empty ? null : taker;
    }

    private static async Task TakeAsync(HttpClient browser, Guid job, bool gives)
    {
        var page = await browser.PageAsync("/jobs");
        var token = page.QuerySelector("input[name=__RequestVerificationToken]")!.GetAttribute("value")!;
        var answer = await browser.PostAsync(
            $"/jobs/{job}/take",
            new FormUrlEncodedContent([
                KeyValuePair.Create("__RequestVerificationToken", token),
                KeyValuePair.Create("gives", gives ? "true" : "false"),
            ]),
            FloorApp.Stop
        );
        Assert.Equal(HttpStatusCode.Found, answer.StatusCode);
    }
}
