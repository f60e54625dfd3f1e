using BrewFloor.Brewing.Calculators;
using BrewFloor.Web.Drawing;
using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Calculators;

/// <summary>What comes out, with its range, and what the numbers say.</summary>
public sealed partial class AnswerCard(Wording wording)
{
    [Parameter, EditorRequired]
    public required Asked Asked { get; set; }

    // The stripe, on a card of its own: it can hurt someone or break a tank.
    private Finding[] Dangers => [.. Asked.Answer?.Findings.Where(finding => finding.Weight is Weight.Danger) ?? []];

    private string Label(string result) => wording.Calculator("result." + result);

    private string Value(Result result) => FigureWords.Of(result.Value, wording.Figures);

    // In the unit of the value itself, so that both are read at once.
    private string? Band(Result result)
    {
        if (result is not { Low: { } low, High: { } high })
        {
            return null;
        }

        var unit = FigureWords.UnitOf(result.Value, wording.Figures.Units);
        return wording[
            "calc-between",
            new("low", FigureWords.Number(low, unit, wording.Figures)),
            new("high", FigureWords.Number(high, unit, wording.Figures))
        ];
    }

    private static MarkKind MarkOf(Finding finding) =>
        finding.Weight is Weight.Caution ? MarkKind.Caution : MarkKind.Note;

    private static string LookOf(Finding finding) => finding.Weight is Weight.Caution ? "tag" : "state";
}
