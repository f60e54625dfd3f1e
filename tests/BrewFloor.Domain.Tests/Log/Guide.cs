using System.Text;
using BrewFloor.Web.Tests.SourceTree;

namespace BrewFloor.Domain.Tests.Log;

/// <summary>The page of the guide that says what the floor says, made from the matrix.</summary>
internal static class Guide
{
    public const string Page = "docs/guide/rules.md";
    private const string Lines = "tests/samples/kinds.csv";

    private const string Intro = """
        # What the floor says

        Every kind of entry, and what the floor says to it in each condition of a tank. This page is made from
        `tests/samples/matrix.csv` and `tests/samples/kinds.csv`; `tests/BrewFloor.Domain.Tests/Log/GuideTests.cs` fails when it
        differs, writes the page anew beside the tests' other results, and says where.

        - **goes**: nothing speaks against it.
        - **caution**: think again. A reason lets it through.
        - **stop**: the rules of the floor say no. A brewer can allow it beforehand, with a reason. If it already happened it is
          recorded as done anyway, and a brewer answers for it.
        - **stop!**: as stop, and nobody can allow it beforehand: it can hurt someone or break a vessel.
        - **impossible**: it contradicts the log. Correct the log first.

        The tank of the table is a rated cone, passivated, clean, sanitized an hour ago, its vent open, with air in it; the beer is an
        ale that finished yesterday, with the trub out and the yeast in. Conditions after the first three are those of a tank that
        holds what the entry is about: beer for entries about beer, nothing for cleaning and filling. A cell names the strongest
        objection; the floor says all of them. A product's label, the vessel maker's rating, local codes and licensed practice come
        before anything that stands here.


        """;

    public static IReadOnlyDictionary<string, string> ByKind() =>
        Tree.Read(Lines)
            .Split('\n', StringSplitOptions.RemoveEmptyEntries)
            .Skip(1)
            .Select(line => line.Split(',', 2))
            .ToDictionary(cells => cells[0], cells => cells[1].Trim('"'));

    public static string Made()
    {
        var page = new StringBuilder(Intro.ReplaceLineEndings("\n"));
        var lines = ByKind();
        page.Append("## Every kind in a line\n\n");
        foreach (var kind in Matrix.ByHand().Select(row => row.Kind).Distinct())
        {
            page.Append(null, $"- **{Words(kind)}**: {lines.GetValueOrDefault(kind)}\n");
        }

        page.Append("\n## The table\n\n| entry | ").AppendJoin(" | ", Matrix.Conditions.Select(c => c.Name));
        page.Append(" |\n| --- |").Insert(page.Length, " --- |", Matrix.Conditions.Length).Append('\n');
        foreach (var (kind, what, cells) in Matrix.ByHand())
        {
            page.Append(null, $"| {Words(kind)}, {what} | ").AppendJoin(" | ", cells.Select(Cell)).Append(" |\n");
        }

        return page.ToString();
    }

    private static string Cell(string verdict) =>
        verdict.Split(' ', 2) is [var level, var code] ? $"**{level}** {Words(code)}" : verdict;

    private static string Words(string code) => code.Replace('-', ' ').Replace("co2", "CO2", StringComparison.Ordinal);
}
