using System.Text.Json.Nodes;
using BrewFloor.Domain.Log;
using BrewFloor.Store.Log;
using BrewFloor.Web.Api;
using BrewFloor.Web.Tests.SourceTree;

namespace BrewFloor.Web.Tests.Api;

/// <summary>Every kind, as it is stored, can be shown to a program and sent back by one.</summary>
public sealed class EveryKindTests
{
    public static TheoryData<string> Kinds => [.. EntryKinds.ByName.Keys.Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void What_a_program_is_shown_it_can_send(string kind)
    {
        var sample = Tree.Read($"tests/samples/{kind}.v1.json");
        var stored = EntryJson.Read(kind, 1, sample);
        var id = Guid.CreateVersion7();
        var sent = Shown.Of(stored);
        sent["id"] = id.ToString();
        sent["kind"] = kind;

        var reader = new EntryReader();
        reader.Read(sent);
        var read = Assert.Single(reader.Sent()).Entry;

        Assert.Empty(reader.Spoken);
        Assert.Equal(Without(stored with { Id = id }), Without(read));
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void No_key_that_a_program_is_shown_ends_in_a_unit(string kind)
    {
        var shown = Shown.Of(EntryJson.Read(kind, 1, Tree.Read($"tests/samples/{kind}.v1.json")));

        Assert.DoesNotContain(Keys(shown), key => EndsInUnit(key));
    }

    [Theory]
    [InlineData("volume_l", true)]
    [InlineData("pressure_kpa_gauge", true)]
    [InlineData("volume", false)]
    [InlineData("label_minutes", false)] // its name; the unit stands beside the value
    public void The_unit_check_can_fail(string key, bool ends) => Assert.Equal(ends, EndsInUnit(key));

    // What was typed, and the touched subjects, are the floor's to fill in.
    private static LogEntry Without(LogEntry entry) =>
        entry switch
        {
            Corrected corrected => corrected with
            {
                Typed = [],
                Touched = [],
                Replacement = corrected.Replacement with { Typed = [] },
            },
            Struck struck => struck with { Touched = [] },
            Answered answered => answered with { Touched = [] },
            _ => entry with { Typed = [] },
        };

    private static bool EndsInUnit(string key) =>
        ((string[])["_l", "_mm", "_c", "_g", "_kpa_gauge", "_g_ml", "_hours"]).Any(unit =>
            key.EndsWith(unit, StringComparison.Ordinal)
        );

    private static IEnumerable<string> Keys(JsonNode? node) =>
        node switch
        {
            JsonObject fields => fields.SelectMany(field => Keys(field.Value).Prepend(field.Key)),
            JsonArray items => items.SelectMany(Keys),
            _ => [],
        };
}
