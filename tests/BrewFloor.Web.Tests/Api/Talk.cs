using System.Net;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json.Nodes;

namespace BrewFloor.Web.Tests.Api;

/// <summary>What a program says and hears.</summary>
internal static class Talk
{
    public const string Problem = "application/problem+json";

    public static string NewId() => Guid.CreateVersion7().ToString();

    public static JsonObject Note(string tank, string words, string? id = null) =>
        new()
        {
            ["id"] = id ?? NewId(),
            ["kind"] = "noted",
            ["tank"] = tank,
            ["note"] = words,
        };

    public static JsonObject Group(params JsonObject[] entries) =>
        new() { ["entries"] = new JsonArray([.. entries.Select(e => e.DeepClone())]) };

    public static JsonObject Litres(double litres) => Quantity(litres, "L");

    public static JsonObject Quantity(double value, string unit) => new() { ["value"] = value, ["unit"] = unit };

    /// <summary>Wort into a tank, with the batch it brings.</summary>
    public static JsonObject Fill(string tank, string batch, double litres = 900) =>
        new()
        {
            ["id"] = NewId(),
            ["kind"] = "filled",
            ["tank"] = tank,
            ["volume"] = Litres(litres),
            ["new_batch"] = new JsonObject
            {
                ["id"] = batch,
                ["name"] = "Harvest Ale",
                ["style"] = "Pale ale",
                ["kind"] = "ale",
                ["original_gravity"] = Quantity(1.048, "SG"),
                ["limit_of_attenuation"] = Quantity(2.6, "°P"),
                ["harvest_planned"] = false,
                ["dry_hops_during_fermentation"] = false,
            },
        };

    /// <summary>Says to the objections what lets everything through that can be.</summary>
    public static JsonObject Insisting(JsonObject entry, IEnumerable<string> codes)
    {
        var again = entry.DeepClone().AsObject();
        again["answer"] = new JsonObject
        {
            ["reason"] = "It is so",
            ["codes"] = new JsonArray([.. codes.Distinct().Select(code => (JsonNode)code)]),
            ["already_happened"] = true,
        };
        return again;
    }

    public static Task<HttpResponseMessage> SendAsync(this HttpClient client, JsonNode body, string query = "") =>
        client.PostAsJsonAsync("/api/v1/log" + query, body, FloorApp.Stop);

    public static Task<HttpResponseMessage> SendTextAsync(
        this HttpClient client,
        string body,
        string type = "application/json"
    ) => client.PostAsync("/api/v1/log", new StringContent(body, Encoding.UTF8, type), FloorApp.Stop);

    /// <summary>The body, which must be of this status.</summary>
    public static async Task<JsonObject> HearAsync(this HttpResponseMessage answer, HttpStatusCode status)
    {
        var text = await answer.Content.ReadAsStringAsync(FloorApp.Stop);
        Assert.True(answer.StatusCode == status, $"{(int)answer.StatusCode} instead of {(int)status}: {text}");
        if ((int)status >= 400)
        {
            Assert.Equal(Problem, answer.Content.Headers.ContentType?.MediaType);
            Assert.DoesNotContain("   at ", text, StringComparison.Ordinal); // a stack trace
        }

        return JsonNode.Parse(text)!.AsObject();
    }

    public static async Task<JsonObject> ReadAsync(this HttpClient client, string path) =>
        await (await client.GetAsync("/api/v1" + path, FloorApp.Stop)).HearAsync(HttpStatusCode.OK);

    public static string Text(this JsonNode? node, string key) => node![key]!.GetValue<string>();

    public static string[] Codes(this JsonObject problem) =>
        [.. problem["objections"]!.AsArray().Select(objection => objection.Text("code"))];
}
