using System.Text.Json.Nodes;
using BrewFloor.Domain.Log;
using Microsoft.AspNetCore.Routing;

namespace BrewFloor.Web.Tests.Api;

public sealed class OpenApiTests(FloorApp app) : IClassFixture<FloorApp>
{
    [Fact]
    public async Task Every_endpoint_for_programs_is_described_with_a_summary_a_tag_its_token_and_its_errors()
    {
        var document = await DocumentAsync();

        Assert.Equal(Mapped().Order(), Described(document).Keys.Order());
        Assert.Empty(
            Described(document).Where(operation => IsBare(operation.Value)).Select(operation => operation.Key)
        );
        Assert.Equal("bearer", document["components"]!["securitySchemes"]!["token"].Text("scheme"));
    }

    [Fact]
    public async Task Every_kind_of_entry_has_a_schema_and_the_body_takes_each()
    {
        var document = await DocumentAsync();
        var schemas = document["components"]!["schemas"]!.AsObject();
        var body = document["paths"]!["/api/v1/log"]!["post"]!["requestBody"]!["content"]!["application/json"]![
            "schema"
        ]!;

        Assert.Equal("#/components/schemas/entries", body.Text("$ref"));
        Assert.Empty(EntryKinds.ByName.Keys.Where(kind => !schemas.ContainsKey(kind)));
        Assert.Equal(EntryKinds.ByName.Count + 1, schemas["entries"]!["oneOf"]!.AsArray().Count);
        Assert.Equal(
            "L",
            schemas["filled"]!["properties"]!["volume"]!["properties"]!["unit"]!["enum"]![0]!.GetValue<string>()
        );
        Assert.Contains("volume", schemas["filled"]!["required"]!.AsArray().Select(name => name!.GetValue<string>()));
    }

    [Fact]
    public async Task The_check_can_fail()
    {
        var operation = Described(await DocumentAsync())["GET /api/v1/tanks"].DeepClone().AsObject();
        Assert.False(IsBare(operation));

        operation.Remove("summary");

        Assert.True(IsBare(operation));
    }

    private static bool IsBare(JsonNode operation) =>
        operation["summary"]?.GetValue<string>() is not { Length: > 0 }
        || operation["tags"] is not JsonArray { Count: > 0 }
        || operation["security"] is not JsonArray { Count: > 0 }
        || operation["responses"]!["401"]?["content"]?["application/problem+json"] is null;

    private async Task<JsonObject> DocumentAsync() =>
        JsonNode.Parse(await app.Stranger().GetStringAsync("/openapi/v1.json", FloorApp.Stop))!.AsObject();

    private IEnumerable<string> Mapped() =>
        from endpoint in app.Get<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>()
        let path = "/" + endpoint.RoutePattern.RawText!.TrimStart('/')
        where path.StartsWith("/api/", StringComparison.Ordinal)
        from method in endpoint.Metadata.GetMetadata<IHttpMethodMetadata>()!.HttpMethods
        select $"{method} {path.Replace(":int", "", StringComparison.Ordinal).Replace(":guid", "", StringComparison.Ordinal)}";

    private static Dictionary<string, JsonNode> Described(JsonObject document) =>
        (
            from path in document["paths"]!.AsObject()
            from operation in path.Value!.AsObject()
            select ($"{operation.Key.ToUpperInvariant()} {path.Key}", operation.Value!)
        ).ToDictionary();
}
