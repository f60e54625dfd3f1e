using BrewFloor.Domain;
using BrewFloor.Domain.Log;
using BrewFloor.Web.Shell;

namespace BrewFloor.Web.Doctor;

public enum Health
{
    Fine,

    /// <summary>Nothing is broken; somebody should look at it.</summary>
    Look,

    Bad,
}

/// <summary>One thing that was looked at.</summary>
/// <param name="Of">What: database, disk, clock, zones, proxy, backup.</param>
/// <param name="Health">How it is.</param>
/// <param name="Code">Of the sentence.</param>
/// <param name="Numbers">The sentence stands on.</param>
public sealed record Finding(string Of, Health Health, string Code, Listed<Number> Numbers)
{
    public static Finding Fine(string of, string code, params ReadOnlySpan<Number> numbers) =>
        new(of, Health.Fine, code, [.. numbers]);

    public static Finding Look(string of, string code, params ReadOnlySpan<Number> numbers) =>
        new(of, Health.Look, code, [.. numbers]);

    public static Finding Bad(string of, string code, params ReadOnlySpan<Number> numbers) =>
        new(of, Health.Bad, code, [.. numbers]);

    public string Name(Wording wording) => wording["doctor-of-" + Of];

    public string Word(Wording wording) => wording["doctor-is-" + Health.ToString().ToLowerInvariant()];

    public string Sentence(Wording wording) => wording["doctor-says-" + Code, [.. Numbers]];
}
