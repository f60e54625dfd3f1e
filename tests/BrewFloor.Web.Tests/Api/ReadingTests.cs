using System.Net;
using System.Text.Json.Nodes;
using BrewFloor.Domain.People;
using BrewFloor.Domain.Tanks;
using BrewFloor.Domain.Yeast;
using BrewFloor.Store.Tests.Postgres;
using UnitsNet;
using static BrewFloor.Store.Tests.Postgres.FreshFloor;

namespace BrewFloor.Web.Tests.Api;

/// <summary>A floor with K3 full of fermenting beer, P2 sanitized, S1 untouched, and 240 notes.</summary>
public sealed class BusyFloor(TestServer server) : IAsyncLifetime
{
    public const int Notes = 240;

    public FloorApp App { get; } = new(server);

    public Tank K3 { get; private set; } = null!;

    public Guid Batch { get; } = Guid.CreateVersion7();

    public Guid Yeast { get; } = Guid.CreateVersion7();

    public DateTimeOffset FilledAt { get; } = Ago(20);

    public HttpClient Program { get; private set; } = null!;

    public async ValueTask InitializeAsync()
    {
        await App.InitializeAsync();
        K3 = await App.TankAsync("K3");
        var p2 = await App.TankAsync("P2");
        await App.TankAsync("S1");
        await App.AppendAsync(
            new CultureReceived(new(Yeast, "House ale", CultureKind.DryPack), YeastAmount.Of(Mass.FromGrams(500)))
            {
                Id = NewId(),
                At = Ago(30),
            },
            new CultureReceived(new(NewId(), "House lager", CultureKind.DryPack), YeastAmount.Of(Mass.FromGrams(500)))
            {
                Id = NewId(),
                At = Ago(30),
            }
        );
        await App.AppendAsync(Fill(K3.Id, Batch, 900, FilledAt));
        await App.AppendAsync(
            new Pitched(K3.Id, Batch, [new(Yeast, YeastAmount.Of(Mass.FromGrams(400)))])
            {
                Id = NewId(),
                At = FilledAt.AddHours(1),
            }
        );
        for (var i = 0; i < Notes; i += 40)
        {
            await App.AppendAsync([.. Enumerable.Range(i, 40).Select(n => Note(i % 80 == 0 ? K3.Id : p2.Id, $"{n}"))]);
        }

        Program = await App.WithTokenAsync("read");
    }

    public ValueTask DisposeAsync() => App.DisposeAsync();
}

public sealed class ReadingTests(BusyFloor floor) : IClassFixture<BusyFloor>
{
    private readonly HttpClient _program = floor.Program;

    [Fact]
    public async Task A_tank_says_what_it_is_what_is_in_it_and_how_clean_it_is()
    {
        var tank = await _program.ReadAsync("/tanks/k3");

        Assert.Equal("K3", tank.Text("code"));
        Assert.Equal("in-use", tank.Text("soil"));
        Assert.Equal(1, tank["batch"]!.GetValue<int>());
        Assert.Equal(1020, tank["working"]!["value"]!.GetValue<double>(), tolerance: 1e-9);
        Assert.Equal("900 L", Said(tank["state"]!["contents"]!["volume"]));
        Assert.Equal("1200 L", Said(tank["total"]));
    }

    [Fact]
    public async Task A_tank_can_be_asked_how_it_was_and_how_it_was_known_to_be()
    {
        var before = floor.FilledAt.AddMinutes(-1).ToString("O").Replace("+", "%2B", StringComparison.Ordinal);
        var after = floor.FilledAt.AddMinutes(1).ToString("O").Replace("+", "%2B", StringComparison.Ordinal);

        Assert.Null((await _program.ReadAsync($"/tanks/K3?at={before}"))["batch"]);
        Assert.Equal(1, (await _program.ReadAsync($"/tanks/K3?at={after}"))["batch"]!.GetValue<int>());
        // It was filled then, but nobody had logged it yet.
        Assert.Null((await _program.ReadAsync($"/tanks/K3?at={after}&known={after}"))["batch"]);
    }

    [Fact]
    public async Task Tanks_come_by_code_in_pages()
    {
        var first = await _program.ReadAsync("/tanks?limit=2");
        var second = await _program.ReadAsync($"/tanks?limit=2&after={first.Text("next")}");

        Assert.Equal(
            ["K3", "P2", "S1"],
            first["items"]!.AsArray().Concat(second["items"]!.AsArray()).Select(t => t.Text("code"))
        );
        Assert.Null(second["next"]);
    }

    [Fact]
    public async Task A_batch_says_its_stage_and_where_it_is()
    {
        var batch = await _program.ReadAsync("/batches/1");

        Assert.Equal("fermenting", batch.Text("stage"));
        Assert.Equal(["K3"], batch["tanks"]!.AsArray().Select(code => code!.GetValue<string>()));
        Assert.Equal("900 L", Said(batch["state"]!["litres"]!["filled_in"]));
        Assert.Equal(floor.Batch.ToString(), (await _program.ReadAsync("/batches"))["items"]![0].Text("id"));
    }

    [Fact]
    public async Task A_culture_says_how_much_is_left()
    {
        var yeast = await _program.ReadAsync($"/cultures/{floor.Yeast}");
        var newest = await _program.ReadAsync("/cultures?limit=1");
        var oldest = await _program.ReadAsync($"/cultures?limit=1&after={newest.Text("next")}");

        Assert.Equal("100 g", Said(yeast["state"]!["amount"]));
        Assert.Equal(
            [2, 1],
            ((JsonObject[])[newest, oldest]).Select(page => page["items"]![0]!["number"]!.GetValue<int>())
        );
        Assert.Null(oldest["next"]);
    }

    [Theory]
    [InlineData("", BusyFloor.Notes + 4)]
    [InlineData("&subject=K3", (BusyFloor.Notes / 2) + 2)]
    [InlineData("&subject=batch:1", 2)]
    [InlineData("&subject=culture:1", 2)]
    public async Task Paging_walks_the_log_exactly_once_in_the_order_it_was_written(string about, int count)
    {
        var seqs = new List<long>();
        for (string? next = ""; next is not null; )
        {
            var page = await _program.ReadAsync($"/log?limit=50{about}{(next.Length > 0 ? $"&after={next}" : "")}");
            seqs.AddRange(page["items"]!.AsArray().Select(entry => entry!["seq"]!.GetValue<long>()));
            next = page["next"]?.GetValue<string>();
            Assert.True(seqs.Count <= count);
        }

        Assert.Equal(count, seqs.Count);
        Assert.Equal(seqs.Order().Distinct(), seqs);
    }

    [Fact]
    public async Task Who_remembers_the_last_seq_reads_on_from_there()
    {
        var all = (await _program.ReadAsync("/log?limit=200"))["items"]!.AsArray();
        var since = all[^5]!["seq"]!.GetValue<long>();

        var rest = (await _program.ReadAsync($"/log?since={since}&limit=4"))["items"]!.AsArray();

        Assert.Equal(all.TakeLast(4).Select(e => e.Text("id")), rest.Select(e => e.Text("id")));
    }

    [Fact]
    public async Task An_entry_is_read_as_it_would_be_sent_with_what_the_floor_said()
    {
        var filled = (await _program.ReadAsync("/log?subject=batch:1&limit=1"))["items"]![0]!;

        Assert.Equal("filled", filled.Text("kind"));
        Assert.Equal("900 L", Said(filled["volume"]));
        Assert.Equal(floor.App.Owner.Id.ToString(), filled.Text("logged_by"));
        Assert.Contains("not-sanitized", filled["objections"]!.AsArray().Select(o => o.Text("code")));
        Assert.Contains("not-sanitized", filled["done_anyway"]!.AsArray().Select(code => code!.GetValue<string>()));
        Assert.True(filled["answer"]!["already_happened"]!.GetValue<bool>());
    }

    [Fact]
    public async Task Jobs_come_with_their_sentence_their_numbers_and_where_to_go()
    {
        var jobs = new List<JsonNode?>();
        for (string? next = ""; next is not null; )
        {
            var page = await _program.ReadAsync($"/jobs?limit=1{(next.Length > 0 ? $"&after={next}" : "")}");
            jobs.AddRange(page["items"]!.AsArray());
            next = page["next"]?.GetValue<string>();
        }

        Assert.Equal(jobs.Count, jobs.Select(job => job.Text("id")).Distinct().Count());
        var trub = Assert.Single(jobs, job => job.Text("rule") is "dump-trub");
        Assert.Equal("K3", trub.Text("tank"));
        Assert.Equal(1, trub!["batch"]!.GetValue<int>());
        Assert.DoesNotContain("{", trub.Text("because"), StringComparison.Ordinal);
        Assert.Equal(jobs.Select(job => job.Text("overdue_at")).Order(), jobs.Select(job => job.Text("overdue_at")));
    }

    [Fact]
    public async Task Who_is_signed_in_reads_the_same_and_writes_nothing_here()
    {
        var browser = floor.App.As(Role.Owner);

        Assert.Equal("K3", (await browser.ReadAsync("/tanks/K3")).Text("code"));
        await (await browser.SendAsync(Talk.Note("K3", "by cookie"))).HearAsync(HttpStatusCode.Forbidden);
    }

    [Theory]
    [InlineData("/tanks/Z9", HttpStatusCode.NotFound, null)]
    [InlineData("/batches/99", HttpStatusCode.NotFound, null)]
    [InlineData("/batches/first", HttpStatusCode.NotFound, null)]
    [InlineData("/cultures/018f0000-0000-7000-8000-000000000001", HttpStatusCode.NotFound, null)]
    [InlineData("/log?subject=Z9", HttpStatusCode.NotFound, null)]
    [InlineData("/log?subject=batch:x", HttpStatusCode.NotFound, null)]
    [InlineData("/log?subject=moon:1", HttpStatusCode.NotFound, null)]
    [InlineData("/nothing", HttpStatusCode.NotFound, null)]
    [InlineData("/log?since=-1", HttpStatusCode.BadRequest, "since")]
    [InlineData("/log?limit=0", HttpStatusCode.BadRequest, "limit")]
    [InlineData("/jobs?limit=201", HttpStatusCode.BadRequest, "limit")]
    [InlineData("/batches?after=x", HttpStatusCode.BadRequest, "after")]
    [InlineData("/tanks/K3?at=then", HttpStatusCode.BadRequest, "at")]
    public async Task What_is_not_there_or_cannot_be_read_is_a_problem(
        string path,
        HttpStatusCode status,
        string? field
    )
    {
        var answer = await _program.GetAsync("/api/v1" + path, FloorApp.Stop);

        Assert.Equal(field, (await answer.HearAsync(status))["field"]?.GetValue<string>());
    }

    private static string Said(JsonNode? quantity) => $"{quantity!["value"]} {quantity["unit"]}";
}
