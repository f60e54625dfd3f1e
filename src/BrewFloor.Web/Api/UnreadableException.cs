using BrewFloor.Domain.Log;

namespace BrewFloor.Web.Api;

/// <summary>Something a program sent cannot be read. It carries the key of a sentence and its numbers, never the sentence.</summary>
internal sealed class UnreadableException(string field, string key, params Number[] numbers)
    : Exception($"{field}: {key}")
{
    /// <summary>Where it stands: "entries.2.volume", or the name of a parameter.</summary>
    public string Field { get; } = field;

    public string Key { get; } = key;

    public IReadOnlyList<Number> Numbers { get; } = numbers;

    /// <summary>What was asked for isn't there, rather than badly written.</summary>
    public bool IsMissing { get; init; }
}
