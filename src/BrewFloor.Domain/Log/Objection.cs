namespace BrewFloor.Domain.Log;

/// <summary>How strongly the floor objects.</summary>
public enum Level
{
    Caution, // think again; a reason lets it through
    Stop, // the rules say no; a brewer may allow it beforehand
    HardStop, // it can hurt someone or break a vessel: nobody may allow it, no computed number removes it
    Impossible, // it contradicts the log
}

/// <summary>What an entry is: something that happened, that was ordered, or that was measured.</summary>
public enum Nature
{
    Done,
    Told,
    Reading,
}

/// <summary>A number (or a name) that an objection or a job stands on, as judged.</summary>
/// <remarks>
/// The value is a UnitsNet quantity in its stored unit, a gravity, an instant, a day, a whole number or a text; the wording
/// turns it into the reader's units and language.
/// </remarks>
public readonly record struct Number(string Name, object? Value);

/// <summary>Why the floor objects: data only. The sentence is in the string resources, under the code.</summary>
public sealed record Objection(string Code, Level Level, Listed<Number> Numbers)
{
    /// <summary>The version of the guard that spoke; raised in its file when its meaning changes.</summary>
    public int Guard { get; init; } = 1;

    public static Objection Caution(string code, params ReadOnlySpan<Number> numbers) =>
        new(code, Level.Caution, [.. numbers]);

    public static Objection Stop(string code, params ReadOnlySpan<Number> numbers) =>
        new(code, Level.Stop, [.. numbers]);

    public static Objection HardStop(string code, params ReadOnlySpan<Number> numbers) =>
        new(code, Level.HardStop, [.. numbers]);

    public static Objection Impossible(string code, params ReadOnlySpan<Number> numbers) =>
        new(code, Level.Impossible, [.. numbers]);
}
