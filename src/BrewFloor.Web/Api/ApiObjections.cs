using System.Text.Json;
using System.Text.Json.Nodes;
using BrewFloor.Domain.Log;
using BrewFloor.Web.Shell;

namespace BrewFloor.Web.Api;

/// <summary>What the floor says, for programs: the code to act on, the sentence to show, the numbers behind it.</summary>
internal static class ApiObjections
{
    public static JsonArray Shown(IEnumerable<Objection> objections, Wording words) =>
        [.. objections.Select(objection => Shown(objection, words))];

    /// <param name="entry">The entry it is about.</param>
    public static JsonObject Shown(Guid entry, Objection objection, Wording words)
    {
        var shown = Shown(objection, words);
        shown.Insert(0, "entry", entry.ToString());
        return shown;
    }

    private static JsonObject Shown(Objection objection, Wording words) =>
        new()
        {
            ["code"] = objection.Code,
            ["level"] = JsonNamingPolicy.SnakeCaseLower.ConvertName(objection.Level.ToString()),
            ["text"] = words.Say(objection),
            ["numbers"] = ApiQuantities.Shown(objection.Numbers),
        };
}
