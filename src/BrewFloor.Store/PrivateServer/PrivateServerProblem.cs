using System.Diagnostics.CodeAnalysis;

namespace BrewFloor.Store.PrivateServer;

/// <summary>Why there is no database to work with, or no backup of it: a code, its numbers, and a sentence with what to do.</summary>
/// <remarks>
/// The sentence stands here and not in the string resources: it is printed on the console of whoever starts the
/// program, before there is a page, a reader or a language.
/// </remarks>
[SuppressMessage("Naming", "CA1710", Justification = "It is caught to be read out, by its name: a problem.")]
[SuppressMessage("Roslynator", "RCS1194", Justification = "None is made without a code and a sentence.")]
public sealed class PrivateServerProblem : Exception
{
    internal PrivateServerProblem(string code, string sentence, params IEnumerable<(string Name, object Value)> numbers)
        : base(sentence)
    {
        Code = code;
        Numbers = numbers.ToDictionary(n => n.Name, n => n.Value, StringComparer.Ordinal);
    }

    /// <summary>What is wrong, for programs: for example <c>folder-in-use</c>.</summary>
    public string Code { get; }

    /// <summary>What the sentence stands on: folders, versions, megabytes.</summary>
    public IReadOnlyDictionary<string, object> Numbers { get; }

    /// <summary>What another program or the system gave as its reason, as a sentence of ours.</summary>
    internal static string Sentence(string reason) => reason.Trim().TrimEnd('.') + ".";
}
