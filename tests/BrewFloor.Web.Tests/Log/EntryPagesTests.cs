using System.Net;
using AngleSharp.Html.Dom;
using BrewFloor.Domain.People;
using BrewFloor.Domain.Tanks;
using BrewFloor.Store.Tests.Postgres;
using BrewFloor.Web.Shell;

namespace BrewFloor.Web.Tests.Log;

/// <summary>Pages that log, correct and strike, as a browser without script has them.</summary>
public sealed class EntryPagesTests(FloorApp app) : IClassFixture<FloorApp>, IAsyncLifetime
{
    private static readonly Wording Words = Reader.Stranger;
    private static int _tanks;

    private readonly string _code = $"E{Interlocked.Increment(ref _tanks)}";
    private Tank _tank = null!;

    private string Form => $"/tanks/{_code}/log/noted";

    public async ValueTask InitializeAsync() => _tank = await app.TankAsync(_code);

    public ValueTask DisposeAsync() => ValueTask.CompletedTask;

    [Fact]
    public async Task A_form_that_was_sent_before_with_other_words_says_so_also_when_it_only_asks()
    {
        var browser = app.As(Role.Helper);
        var page = await browser.PageAsync(Form);
        Assert.Equal(HttpStatusCode.Found, (await SendAsync(browser, page, ("note", "once"))).StatusCode);

        var asked = await SendAsync(browser, page, ("note", "twice"), ("check", "true"));
        var sent = await SendAsync(browser, page, ("note", "twice"));
        var same = await SendAsync(browser, page, ("note", "once"), ("check", "true"));

        Assert.Equal(HttpStatusCode.Conflict, sent.StatusCode);
        Assert.Contains(Words.Entry("form.taken"), await SaidAsync(asked), StringComparison.Ordinal);
        Assert.Contains(Words.Entry("form.taken"), await SaidAsync(sent), StringComparison.Ordinal);
        Assert.DoesNotContain(Words.Entry("form.taken"), await SaidAsync(same), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Somebody_who_is_nobody_of_the_house_did_not_do_it()
    {
        var browser = app.As(Role.Helper);
        var nobody = Guid.CreateVersion7();

        var refused = await SendAsync(browser, await browser.PageAsync(Form), ("done-by", $"{nobody}"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        Assert.Contains(
            $"Nobody of this house has the id {nobody}.",
            await SaidAsync(refused),
            StringComparison.Ordinal
        );

        var helper = $"{app.Person(Role.Helper).Id}";
        var stored = await SendAsync(browser, await browser.PageAsync(Form), ("done-by", helper));
        Assert.Equal(HttpStatusCode.Found, stored.StatusCode);
    }

    [Fact]
    public async Task A_strike_that_would_make_later_entries_impossible_offers_to_strike_them_together()
    {
        var batch = Guid.CreateVersion7();
        var filled = FreshFloor.Fill(_tank.Id, batch, at: FreshFloor.Ago(3));
        Emptied emptied = new(_tank.Id, batch, FreshFloor.Litres(1))
        {
            Id = Guid.CreateVersion7(),
            At = FreshFloor.Ago(2),
        };
        await app.AppendAsync(filled);
        await app.AppendAsync(emptied);
        var browser = app.As(Role.Owner);
        var path = $"/entries/{filled.Id}/strike";

        var refused = await browser.SendFormAsync(path, "strike", ("reason", "Another tank"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        var page = await refused.PageAsync();
        Assert.Equal([$"{emptied.Id}"], page.QuerySelectorAll("input[name=also]").Select(i => i.GetAttribute("value")));

        var struck = await browser.SendFormAsync(path, page, "strike", ("together", "true"));
        Assert.Equal(HttpStatusCode.Found, struck.StatusCode);
        Assert.Equal(
            2L,
            await app.AskAsync<long>(
                $"SELECT count(DISTINCT entry_id) FROM entry_subjects WHERE entry_id IN ('{filled.Id}', '{emptied.Id}') AND until IS NOT NULL"
            )
        );
    }

    private Task<HttpResponseMessage> SendAsync(
        HttpClient browser,
        IHtmlDocument page,
        params (string Name, string Value)[] filled
    ) => browser.SendFormAsync(Form, page, "entry", filled);

    private static async Task<string> SaidAsync(HttpResponseMessage answer) =>
        (await answer.PageAsync()).QuerySelector("main").Words();
}
