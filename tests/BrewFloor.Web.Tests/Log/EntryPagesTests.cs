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

    [Fact]
    public async Task However_many_later_entries_there_are_they_are_struck_together_in_a_few_rounds()
    {
        var batch = Guid.CreateVersion7();
        var filled = FreshFloor.Fill(_tank.Id, batch, at: FreshFloor.Ago(30));
        await app.AppendAsync(filled);
        for (var hour = 29; hour > 20; hour--)
        {
            await app.AppendAsync(
                new TemperatureTaken(_tank.Id, UnitsNet.Temperature.FromDegreesCelsius(18))
                {
                    Id = Guid.CreateVersion7(),
                    At = FreshFloor.Ago(hour),
                    BatchId = batch,
                }
            );
        }

        var browser = app.As(Role.Owner);
        var path = $"/entries/{filled.Id}/strike";
        var answer = await browser.SendFormAsync(path, "strike", ("reason", "Another tank"));
        for (var round = 0; round < 3 && answer.StatusCode is HttpStatusCode.UnprocessableEntity; round++)
        {
            answer = await browser.SendFormAsync(path, await answer.PageAsync(), "strike", ("together", "true"));
        }

        Assert.Equal(HttpStatusCode.Found, answer.StatusCode);
        Assert.Equal(
            0L,
            await app.AskAsync<long>(
                $"SELECT count(*) FROM entry_subjects s JOIN entries e ON e.id = s.entry_id WHERE subject_id = '{batch}' AND until IS NULL AND e.kind <> 'struck'"
            )
        );
    }

    [Fact]
    public async Task An_original_gravity_that_was_mistyped_and_an_allergen_that_was_forgotten_are_put_right()
    {
        var batch = Guid.CreateVersion7();
        var filled = FreshFloor.Fill(_tank.Id, batch, at: FreshFloor.Ago(3));
        await app.AppendAsync(
            filled with
            {
                NewBatch = filled.NewBatch! with
                {
                    OriginalGravity = BrewFloor.Brewing.Extract.SpecificGravity.Of(1.084),
                },
            }
        );
        var browser = app.As(Role.Owner);

        var path = $"/entries/{filled.Id}/correct";
        var heard = await browser.SendFormAsync(
            path,
            "correct",
            ("original", "1.048"),
            ("original.unit", "SG"),
            ("allergens", "wheat, milk"),
            ("reason", "Two figures changed places")
        );
        var answer = await browser.SendFormAsync(
            path,
            await heard.PageAsync(),
            "correct",
            ("answer.happened", "true"),
            ("answer.reason", "So it was")
        );

        Assert.Equal(HttpStatusCode.Found, answer.StatusCode);
        Assert.Equal(
            """1.048 ["wheat", "milk"]""",
            await app.AskAsync<string>(
                $"SELECT (state->>'original_gravity') || ' ' || (state->>'allergens') FROM states WHERE subject_id = '{batch}'"
            )
        );
    }

    [Fact]
    public async Task A_row_of_kegs_without_their_kind_is_asked_again_and_not_left_out()
    {
        var batch = Guid.CreateVersion7();
        await app.AppendAsync(FreshFloor.Fill(_tank.Id, batch, at: FreshFloor.Ago(3)));
        var browser = app.As(Role.Helper);

        var answer = await browser.SendFormAsync(
            $"/tanks/{_code}/log/packaged",
            "entry",
            ("volume", "20"),
            ("volume.unit", "L"),
            ("containers.1.size", "0.5"),
            ("containers.1.size.unit", "L"),
            ("containers.1.count", "40")
        );

        var page = await answer.PageAsync();
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal("40", page.QuerySelector("#f-containers-1-count")!.GetAttribute("value"));
        Assert.NotNull(page.QuerySelector("#f-containers-1-kind-note.wrong"));
    }

    private Task<HttpResponseMessage> SendAsync(
        HttpClient browser,
        IHtmlDocument page,
        params (string Name, string Value)[] filled
    ) => browser.SendFormAsync(Form, page, "entry", filled);

    private static async Task<string> SaidAsync(HttpResponseMessage answer) =>
        (await answer.PageAsync()).QuerySelector("main").Words();
}
