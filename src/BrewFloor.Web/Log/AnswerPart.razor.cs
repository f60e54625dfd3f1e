using BrewFloor.Domain.Log;
using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Log;

/// <summary>The objections with their numbers, and what a person may answer. The same part under every form.</summary>
public sealed partial class AnswerPart(Wording wording)
{
    private static readonly string[] Reasons = ["reason-known", "reason-measured", "reason-agreed"];

    /// <summary>Null, or without objections: only the place where they will stand.</summary>
    [Parameter, EditorRequired]
    public required Verdict? Verdict { get; set; }

    /// <summary>"Not filled yet".</summary>
    [Parameter]
    public string? Title { get; set; }

    /// <summary>Where a brewer allows it beforehand; null where nobody can.</summary>
    [Parameter]
    public string? AllowAt { get; set; }

    [Parameter, EditorRequired]
    public required Answer Answer { get; set; }

    private string Codes => string.Join(' ', Verdict!.Standing.Select(o => o.Code).Distinct(StringComparer.Ordinal));

    private bool IsStopped => Verdict!.Standing.Any(o => o.Level is not Level.Caution);

    private bool CanBeAnswered =>
        Verdict!.Objections.All(o => o.Level is not Level.Impossible) && (!IsStopped || Verdict.CanHaveHappened);

    private static string ClassOf(Level level) =>
        level switch
        {
            Level.Impossible => "impossible",
            Level.HardStop => "hard",
            Level.Stop => "stop",
            _ => "caution",
        };
}
