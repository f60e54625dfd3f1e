using System.Net;
using static BrewFloor.Web.Tests.Api.Talk;

namespace BrewFloor.Web.Tests.Api;

/// <summary>What cannot be read is answered with the field it stands in and a sentence; nothing is stored, nothing fails.</summary>
public sealed class UnreadableTests(FloorApp app) : IClassFixture<FloorApp>, IAsyncLifetime
{
    private static readonly SemaphoreSlim First = new(1, 1);
    private HttpClient _gauge = null!;

    public async ValueTask InitializeAsync()
    {
        _gauge = await app.WithTokenAsync("log");
        await First.WaitAsync(FloorApp.Stop);
        try
        {
            if (await app.AskAsync<long>("SELECT count(*) FROM tanks") == 0)
            {
                await app.TankAsync("K3");
            }
        }
        finally
        {
            First.Release();
        }
    }

    public ValueTask DisposeAsync() => ValueTask.CompletedTask;

    [Theory]
    [InlineData("note", "\"note\": 5")]
    [InlineData("note", "\"note\": \"a\\u0000b\"")] // no database keeps it
    [InlineData("note", "\"note\": \"\\ud800\"")] // half a character
    [InlineData("at", "\"at\": \"2026-03-02T07:00:00\"")] // whose clock?
    [InlineData("at", "\"at\": \"2026-03-02\"")]
    [InlineData("at", "\"at\": \"yesterday\"")]
    [InlineData("at", "\"at\": \"0001-01-01T00:00:00Z\"")] // would be taken for no time at all
    [InlineData("at", "\"at\": \"9999-12-31T23:59:59Z\"")]
    [InlineData("done_by.0", "\"done_by\": [\"Ann\"]")]
    [InlineData("done_by", "\"done_by\": \"Ann\"")]
    [InlineData("answer", "\"answer\": \"yes\"")]
    [InlineData("answer.because", "\"answer\": {\"because\": \"so\"}")]
    [InlineData("answer.already_happened", "\"answer\": {\"already_happened\": \"true\"}")]
    [InlineData("seq", "\"seq\": 5")]
    [InlineData("recorded", "\"recorded\": \"2026-03-02T07:00:00Z\"")]
    [InlineData("logged_by", "\"logged_by\": \"018f0000-0000-7000-8000-0000000000a1\"")]
    [InlineData("done_anyway", "\"done_anyway\": [\"not-sanitized\"]")] // the floor's own to say
    [InlineData("typed", "\"typed\": {}")]
    [InlineData("temperature", "\"temperature\": 20")]
    [InlineData("temperature", "\"temperature\": {\"value\": 20}")]
    [InlineData("temperature", "\"temperature\": {\"value\": 20, \"unit\": \"L\"}")] // a unit, but not of this
    [InlineData("temperature", "\"temperature\": {\"value\": 20, \"unit\": \"K\"}")]
    [InlineData("temperature", "\"temperature\": {\"value\": \"20\", \"unit\": \"°C\"}")]
    [InlineData("temperature", "\"temperature\": {\"value\": 1e999, \"unit\": \"°C\"}")]
    [InlineData("temperature", "\"temperature\": {\"value\": null, \"unit\": \"°C\"}")]
    [InlineData("temperature_c", "\"temperature_c\": 20")]
    public async Task A_bad_field_of_a_reading_is_named(string field, string bad)
    {
        var temperature = bad.StartsWith("\"temperature\"", StringComparison.Ordinal)
            ? ""
            : """, "temperature": {"value": 20, "unit": "°C"}""";

        await RefusedAsync(
            field,
            $$"""{"id": "{{NewId()}}", "kind": "temperature", "tank": "K3"{{temperature}}, {{bad}}}"""
        );
    }

    [Theory]
    [InlineData("id", """{"kind": "vented", "tank": "K3"}""")]
    [InlineData("id", """{"id": "00000000-0000-0000-0000-000000000000", "kind": "vented", "tank": "K3"}""")]
    [InlineData("id", """{"id": 7, "kind": "vented", "tank": "K3"}""")]
    [InlineData("kind", """{"id": "#", "tank": "K3"}""")]
    [InlineData("kind", """{"id": "#", "kind": "exploded", "tank": "K3"}""")]
    [InlineData("tank", """{"id": "#", "kind": "vented"}""")]
    [InlineData("tank", """{"id": "#", "kind": "vented", "tank": 3}""")]
    [InlineData("tank_id", """{"id": "#", "kind": "vented", "tank_id": "K3"}""")]
    [InlineData("tank", """{"id": "#", "kind": "vented", "tank_id": "#", "tank": "K3"}""")] // said twice
    [InlineData("bath", """{"id": "#", "kind": "passivated", "tank": "K3", "bath": "Nitric"}""")]
    [InlineData("bath", """{"id": "#", "kind": "passivated", "tank": "K3", "bath": "nitric, citric"}""")]
    [InlineData("bath", """{"id": "#", "kind": "passivated", "tank": "K3", "bath": 1}""")]
    [InlineData("is_hot", """{"id": "#", "kind": "rinsed", "tank": "K3"}""")]
    [InlineData("ph", """{"id": "#", "kind": "ph", "tank": "K3", "ph": "4.3"}""")]
    [InlineData(
        "squares",
        """{"id": "#", "kind": "counted", "culture": 1, "squares": 5.5, "dilution": 1, "live": 1, "dead": 1}"""
    )]
    [InlineData(
        "planned_at",
        """{"id": "#", "kind": "fill-planned", "tank": "K3", "batch_id": "#", "planned_at": "soon", "volume": {"value": 1, "unit": "L"}}"""
    )]
    [InlineData(
        "cultures.0.amount",
        """{"id": "#", "kind": "pitched", "tank": "K3", "batch": 1, "cultures": [{"culture": 1, "amount": {"value": 1, "unit": "°C"}}]}"""
    )]
    [InlineData(
        "cultures.0.amount",
        """{"id": "#", "kind": "pitched", "tank": "K3", "batch": 1, "cultures": [{"culture": 1}]}"""
    )]
    [InlineData("cultures.0", """{"id": "#", "kind": "pitched", "tank": "K3", "batch": 1, "cultures": [null]}""")]
    [InlineData(
        "new_batch.number",
        """{"id": "#", "kind": "filled", "tank": "K3", "volume": {"value": 1, "unit": "L"}, "new_batch": {"id": "#", "name": "x", "style": "x", "kind": "ale", "number": 7}}"""
    )]
    [InlineData(
        "new_batch.original_gravity",
        """{"id": "#", "kind": "filled", "tank": "K3", "volume": {"value": 1, "unit": "L"}, "new_batch": {"id": "#", "name": "x", "style": "x", "kind": "ale", "original_gravity": {"value": 1048, "unit": "SG"}}}"""
    )]
    [InlineData("", """{"id": "#", "kind": "noted", "note": "about nothing"}""")]
    [InlineData("entries", """{"entries": []}""")]
    [InlineData("check", """{"entries": [], "check": true}""")]
    [InlineData("entries.0", """{"entries": [7]}""")]
    [InlineData("", "[]")]
    [InlineData("", "null")]
    [InlineData("", "")]
    [InlineData("", "{")]
    [InlineData("", """{"id": "#", "id": "#", "kind": "vented", "tank": "K3"}""")] // which of them?
    [InlineData("", """{"ph": NaN}""")]
    public async Task A_body_that_is_no_entry_is_answered_with_the_field(string field, string body) =>
        await RefusedAsync(field, body.Replace("#", NewId(), StringComparison.Ordinal));

    [Fact]
    public async Task An_unknown_kind_hears_the_known_ones_and_an_unknown_field_those_of_its_kind()
    {
        var kind = await RefusedAsync("kind", $$"""{"id": "{{NewId()}}", "kind": "exploded"}""");
        var field = await RefusedAsync(
            "volume",
            $$"""{"id": "{{NewId()}}", "kind": "vented", "tank": "K3", "volume": 1}"""
        );

        Assert.Contains("air-dried, aired, allowed", kind, StringComparison.Ordinal);
        Assert.Contains("tank_id", field, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_tank_batch_or_culture_that_is_not_there_is_not_found()
    {
        foreach (var about in (string[])["\"tank\": \"Z9\"", "\"batch\": 99", "\"culture\": 99"])
        {
            var body = $$"""{"id": "{{NewId()}}", "kind": "noted", "note": "?", {{about}}}""";
            await (await _gauge.SendTextAsync(body)).HearAsync(HttpStatusCode.NotFound);
        }
    }

    [Fact]
    public async Task What_is_not_JSON_or_too_large_is_said_so()
    {
        var xml = await (await _gauge.SendTextAsync("<entry/>", "application/xml")).HearAsync(
            HttpStatusCode.UnsupportedMediaType
        );
        var large = await (
            await _gauge.SendTextAsync($$"""{"id": "{{NewId()}}", "note": "{{new string('x', 1024 * 1024)}}"}""")
        ).HearAsync(HttpStatusCode.RequestEntityTooLarge);

        Assert.Contains("application/json", xml.Text("title"), StringComparison.Ordinal);
        Assert.Contains("1 MB", large.Text("title"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_same_body_without_its_fault_is_stored() => // so that the refusals above are for the fault alone
        await (
            await _gauge.SendTextAsync(
                $$"""{"id": "{{NewId()}}", "kind": "temperature", "tank": "k3", "temperature": {"value": 68, "unit": "°F"}, "note": null}"""
            )
        ).HearAsync(HttpStatusCode.OK);

    private async Task<string> RefusedAsync(string field, string body)
    {
        var before = await app.EntriesAsync();
        var problem = await (await _gauge.SendTextAsync(body)).HearAsync(HttpStatusCode.BadRequest);

        Assert.Equal(field, problem.Text("field"));
        Assert.EndsWith(".", problem.Text("detail"), StringComparison.Ordinal);
        Assert.Equal(before, await app.EntriesAsync());
        return problem.Text("detail");
    }
}
