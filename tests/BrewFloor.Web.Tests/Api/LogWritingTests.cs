using System.Net;
using static BrewFloor.Web.Tests.Api.Talk;

namespace BrewFloor.Web.Tests.Api;

public sealed class LogWritingTests(FloorApp app) : IClassFixture<FloorApp>, IAsyncLifetime
{
    private static int _tanks;

    private readonly string _tank = $"W{Interlocked.Increment(ref _tanks)}";
    private HttpClient _gauge = null!;

    public async ValueTask InitializeAsync()
    {
        await app.TankAsync(_tank);
        _gauge = await app.WithTokenAsync("log", "read");
    }

    public ValueTask DisposeAsync() => ValueTask.CompletedTask;

    [Fact]
    public async Task An_entry_is_stored_and_the_same_again_gets_the_first_answer()
    {
        var note = Note(_tank, "The jacket drips");

        var first = (await (await _gauge.SendAsync(note)).HearAsync(HttpStatusCode.OK))["entries"]![0]!;
        var again = (await (await _gauge.SendAsync(note)).HearAsync(HttpStatusCode.OK))["entries"]![0]!;

        Assert.Equal(note.Text("id"), first.Text("id"));
        Assert.False(first["again"]!.GetValue<bool>());
        Assert.True(again["again"]!.GetValue<bool>());
        Assert.Equal(first["seq"]!.GetValue<long>(), again["seq"]!.GetValue<long>());
        Assert.Equal(first.Text("at"), again.Text("at"));
    }

    [Fact]
    public async Task Something_else_under_the_same_id_is_a_conflict_also_when_only_asked()
    {
        var note = Note(_tank, "once");
        await (await _gauge.SendAsync(note)).HearAsync(HttpStatusCode.OK);
        note["note"] = "twice";

        var problem = await (await _gauge.SendAsync(note)).HearAsync(HttpStatusCode.Conflict);
        await (await _gauge.SendAsync(note, "?check=true")).HearAsync(HttpStatusCode.Conflict);

        Assert.Equal(note.Text("id"), problem.Text("id"));
    }

    [Fact]
    public async Task A_refusal_carries_every_objection_with_its_sentence_and_numbers()
    {
        var fill = Fill(_tank, NewId(), litres: 1100);

        var problem = await (await _gauge.SendAsync(fill)).HearAsync(HttpStatusCode.UnprocessableEntity);

        var objections = problem["objections"]!.AsArray();
        Assert.True(objections.Count >= 3, objections.ToJsonString());
        Assert.All(objections, o => Assert.Equal(fill.Text("id"), o.Text("entry")));
        Assert.All(
            objections,
            o => Assert.Contains(o.Text("level"), (string[])["caution", "stop", "hard_stop", "impossible"])
        );
        Assert.All(objections, o => Assert.DoesNotContain("{", o.Text("text"), StringComparison.Ordinal));
        var headspace = Assert.Single(objections, o => o.Text("code") is "over-working")!["numbers"]!;
        Assert.Equal("L", headspace["volume"].Text("unit"));
    }

    [Fact]
    public async Task A_refused_entry_may_come_again_with_an_answer_and_its_batch_gets_a_number()
    {
        var fill = Fill(_tank, NewId());
        var refused = await (await _gauge.SendAsync(fill)).HearAsync(HttpStatusCode.UnprocessableEntity);

        await (await _gauge.SendAsync(Insisting(fill, refused.Codes()))).HearAsync(HttpStatusCode.OK);
        await (await _gauge.SendAsync(fill)).HearAsync(HttpStatusCode.OK); // without the answer it is the same entry

        Assert.Equal(
            "900",
            await app.AskAsync<string>($"SELECT payload ->> 'volume_l' FROM entries WHERE id = '{fill.Text("id")}'")
        );
        Assert.Equal(
            "900 L",
            await app.AskAsync<string>(
                $"SELECT payload -> 'typed' ->> 'volume_l' FROM entries WHERE id = '{fill.Text("id")}'"
            )
        );
    }

    [Fact]
    public async Task Asking_stores_nothing()
    {
        var before = await app.EntriesAsync();

        var may = await (await _gauge.SendAsync(Group(Note(_tank, "a")), "?check=true")).HearAsync(HttpStatusCode.OK);
        var mayNot = await (await _gauge.SendAsync(Fill(_tank, NewId()), "?check=true")).HearAsync(HttpStatusCode.OK);

        Assert.True(may["may"]!.GetValue<bool>());
        Assert.False(mayNot["may"]!.GetValue<bool>());
        Assert.NotEmpty(mayNot["entries"]![0]!["objections"]!.AsArray());
        Assert.Equal(before, await app.EntriesAsync());
    }

    [Fact]
    public async Task Whoever_did_it_is_somebody_of_the_house()
    {
        var note = Note(_tank, "Looked in");
        note["done_by"] = new System.Text.Json.Nodes.JsonArray(NewId());

        var refused = await (await _gauge.SendAsync(note)).HearAsync(HttpStatusCode.UnprocessableEntity);
        Assert.Equal(["unknown-person"], refused.Codes());

        note["done_by"] = new System.Text.Json.Nodes.JsonArray($"{app.Person(Domain.People.Role.Brewer).Id}");
        await (await _gauge.SendAsync(note)).HearAsync(HttpStatusCode.OK);
    }

    [Fact]
    public async Task A_batch_without_a_number_yet_is_called_by_its_name()
    {
        var batch = NewId();
        var dumped = new System.Text.Json.Nodes.JsonObject
        {
            ["id"] = NewId(),
            ["kind"] = "dumped",
            ["tank"] = _tank,
            ["batch_id"] = batch,
            ["what"] = "yeast",
            ["volume"] = Litres(5),
        };
        await app.TankAsync(_tank + "B");
        var fill = Fill(_tank + "B", batch);

        var asked = await (await _gauge.SendAsync(Group(fill, dumped), "?check=true")).HearAsync(HttpStatusCode.OK);

        var objection = Assert.Single(
            asked["entries"]![1]!["objections"]!.AsArray(),
            o => o.Text("code") is "no-such-beer"
        );
        Assert.Equal($"The log has no beer of batch Harvest Ale in {_tank}.", objection.Text("text"));
    }

    [Fact]
    public async Task Of_a_group_with_one_bad_entry_nothing_is_stored()
    {
        var before = await app.EntriesAsync();

        var refused = await _gauge.SendAsync(Group(Note(_tank, "fine"), Fill(_tank, NewId())));
        var unreadable = await _gauge.SendAsync(Group(Note(_tank, "fine"), Note("NONE", "lost")));

        await refused.HearAsync(HttpStatusCode.UnprocessableEntity);
        Assert.Equal("entries.1.tank", (await unreadable.HearAsync(HttpStatusCode.NotFound)).Text("field"));
        Assert.Equal(before, await app.EntriesAsync());
    }

    [Fact]
    public async Task A_thousand_entries_whose_reply_was_lost_are_a_thousand()
    {
        var before = await app.EntriesAsync();
        var notes = Enumerable.Range(0, 1000).Select(i => Note(_tank, $"note {i}")).ToArray();

        foreach (var some in notes.Chunk(100))
        {
            (await _gauge.SendAsync(Group(some))).Dispose(); // the reply is lost
            var again = await (await _gauge.SendAsync(Group(some))).HearAsync(HttpStatusCode.OK);
            Assert.All(again["entries"]!.AsArray(), entry => Assert.True(entry!["again"]!.GetValue<bool>()));
        }

        Assert.Equal(before + 1000, await app.EntriesAsync());
    }

    [Theory]
    [InlineData(
        "allowed",
        """, "entry_kind": "filled", "codes": ["not-sanitized"], "until": "2030-01-01T00:00:00Z", "reason": "x" """
    )]
    [InlineData("struck", """, "entries": ["018f0000-0000-7000-8000-00000000e001"], "reason": "x" """)]
    [InlineData("answered", """, "entry": "018f0000-0000-7000-8000-00000000e001", "words": "x" """)]
    [InlineData(
        "corrected",
        """, "entry": "018f0000-0000-7000-8000-00000000e001", "reason": "x", "replacement": {"kind": "vented", "tank": "#"} """
    )]
    public async Task A_token_neither_allows_nor_mends(string kind, string payload)
    {
        var tank = kind is "allowed" ? """, "tank": "#" """ : "";
        var body = $$"""{"id": "{{NewId()}}", "kind": "{{kind}}"{{tank}}{{payload}}}""".Replace(
            "#",
            _tank,
            StringComparison.Ordinal
        );

        var refused = await (await _gauge.SendTextAsync(body)).HearAsync(HttpStatusCode.UnprocessableEntity);

        Assert.Contains("not-by-token", refused.Codes());
    }

    [Theory]
    [InlineData(23.9, HttpStatusCode.OK)]
    [InlineData(24.1, HttpStatusCode.UnprocessableEntity)]
    public async Task A_token_reaches_back_a_day(double hours, HttpStatusCode status)
    {
        var note = Note(_tank, "late");
        note["at"] = TimeProvider.System.GetUtcNow().AddHours(-hours).ToString("O");

        await (await _gauge.SendAsync(note)).HearAsync(status);
    }
}
