using System.Text.Json.Nodes;

namespace BrewFloor.Domain.Tests.Log;

/// <summary>The stored form of each kind, a file per kind and version: <c>tests/samples/filled.v1.json</c>.</summary>
internal static class Samples
{
    private static IEnumerable<string> Files =>
        Directory.EnumerateFiles(Path.Combine(AppContext.BaseDirectory, "samples"), "*.v*.json");

    public static IEnumerable<string> Names => Files.Select(file => Path.GetFileName(file).Split('.')[0]);

    public static JsonObject Read(string kind) =>
        JsonNode
            .Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "samples", $"{kind}.v1.json")))!
            .AsObject();
}
