using BrewFloor.Brewing;
using BrewFloor.Brewing.Extract;
using BrewFloor.Web.Log;
using Microsoft.Extensions.Primitives;

namespace BrewFloor.Web.Batches;

/// <summary>"When does it stand at …?", as the address of a batch's page carries it.</summary>
/// <param name="Gravity">Null: nothing was asked, or it couldn't be read.</param>
/// <param name="Posted">As typed; null: a fresh form.</param>
/// <param name="Problems">Why it couldn't be read.</param>
public sealed record AskedGravity(
    SpecificGravity? Gravity,
    IReadOnlyDictionary<string, StringValues>? Posted,
    IReadOnlyDictionary<string, Refusal> Problems
)
{
    private const string Name = "at-gravity";

    public static readonly QuantityField Field = new(Name, Measure.Gravity);

    public static AskedGravity Of(IQueryCollection query, SiteTimes times)
    {
        var posted = query.ToDictionary(pair => pair.Key, pair => pair.Value, StringComparer.Ordinal);
        var said = new FormReader(posted, times);
        var gravity = said.SpecificGravityOrNone(Name);
        return new(gravity, posted.ContainsKey(Name) ? posted : null, said.Problems);
    }
}
