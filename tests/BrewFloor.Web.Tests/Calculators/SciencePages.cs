using System.Text;
using BrewFloor.Brewing.Calculators;
using BrewFloor.Web.Calculators;
using BrewFloor.Web.Shell;
using BrewFloor.Web.Tests.SourceTree;

namespace BrewFloor.Web.Tests.Calculators;

/// <summary>The pages of <c>docs/science</c>: written by hand down to a mark, and from there made from the calculators.</summary>
internal static class SciencePages
{
    public const string Folder = "docs/science/";

    public const string Mark =
        "<!-- Below this line the page is made from the calculators (tests/BrewFloor.Web.Tests/Calculators): change them, not this. -->";

    private static readonly Wording Words = Reader.Stranger;

    private static readonly Dictionary<Subject, string> Files = new()
    {
        [Subject.Extract] = "extract-and-alcohol.md",
        [Subject.Carbonation] = "carbonation.md",
        [Subject.Yeast] = "yeast.md",
        [Subject.Cleaning] = "cleaning.md",
        [Subject.Oxygen] = "oxygen.md",
        [Subject.Heat] = "heat.md",
        [Subject.Volumes] = "volumes.md",
        [Subject.Hops] = "hops.md",
        [Subject.Room] = "room.md",
        [Subject.Tanks] = "tanks.md",
    };

    public static IReadOnlyList<string> All { get; } = ["README.md", .. Files.Values];

    /// <summary>A page as it should be: its own prose, then what the calculators say.</summary>
    public static string Made(string file) =>
        ByHand(file) + Mark + "\n" + (file is "README.md" ? Index() : OfSubject(SubjectOf(file)));

    private static string ByHand(string file)
    {
        if (!Tree.Has(Folder + file))
        {
            return $"# {Words.Calculator($"subject.{SubjectOf(file)}")}\n\n";
        }

        var page = Tree.Read(Folder + file);
        var mark = page.IndexOf(Mark, StringComparison.Ordinal);
        return mark < 0 ? page.TrimEnd('\n') + "\n\n" : page[..mark];
    }

    private static Subject SubjectOf(string file) =>
        Files.First(pair => string.Equals(pair.Value, file, StringComparison.Ordinal)).Key;

    private static string Index()
    {
        var page = new StringBuilder();
        foreach (var group in AllCalculators.All.GroupBy(calculator => calculator.Subject))
        {
            page.Append(null, $"\n- [{Words.Calculator($"subject.{group.Key}")}]({Files[group.Key]})\n");
            foreach (var calculator in group)
            {
                page.Append(null, $"  - {Question(calculator)}\n");
            }
        }

        return page.ToString();
    }

    private static string OfSubject(Subject subject) =>
        string.Concat(AllCalculators.All.Where(calculator => calculator.Subject == subject).Select(Of));

    private static string Of(Calculator calculator)
    {
        var page = new StringBuilder();
        page.Append(null, $"\n## {Question(calculator)}\n\n");
        page.Append(null, $"Asked at `/calculators/{calculator.Name}` and `/api/v1/calculate/{calculator.Name}`.\n\n");
        foreach (var caution in calculator.Cautions)
        {
            page.Append(null, $"**Caution.** {Words.Calculator("caution." + caution)}\n\n");
        }

        page.Append("| asked for | units | accepted | when it is left out |\n| --- | --- | --- | --- |\n");
        page.AppendJoin("", calculator.Inputs.Select(Row));
        page.Append(null, $"\nAnswers: {string.Join("; ", Results(calculator))}.\n\n");
        page.AppendJoin("", calculator.Formula.Select(line => $"    {line}\n"));
        page.Append(null, $"\n- **How sure:** {Words.Calculator(calculator.Name + ".accuracy")}\n");
        page.Append(null, $"- **Assumed:** {Words.Calculator(calculator.Name + ".assumes")}\n");
        page.Append(null, $"- **Sources:** {string.Join("; ", calculator.Sources)}.\n");
        page.Append(null, $"- **Checks:** {string.Join(", ", calculator.Checks)}.\n");
        return page.ToString();
    }

    private static string Question(Calculator calculator) => Words.Calculator(calculator.Name + ".question");

    private static string Row(Input input) =>
        input switch
        {
            QuantityInput quantity =>
                $"| {Label(input)} | {Units(quantity)} | {Range(quantity)} | {LeftOut(quantity)} |\n",
            ChoiceInput choice =>
                $"| {Label(input)} |  | {string.Join(", ", choice.Options.Select(Option))} | {Option(choice.Options[0])} |\n",
            _ => "",
        };

    private static string Label(Input input) => Words.Calculator("input." + input.Name);

    private static string Option(string option) => Words.Calculator("choice." + option);

    private static string Units(QuantityInput input) =>
        string.Join(", ", input.Measure.Units.Select(unit => unit.Symbol));

    private static string Range(QuantityInput input) => $"{Number(input, input.From)} to {Number(input, input.To)}";

    private static string LeftOut(QuantityInput input) =>
        input.Name is "altitude" ? "the altitude of the house"
        : input.HasUsual ? Number(input, input.Start)
        : input.OnlyWith is { } with ? $"it must be given with: {Option(with.Option)}"
        : "it must be given";

    private static string Number(QuantityInput input, double value) =>
        FigureWords.Number(new Figure(value, input.Measure), input.Measure.First, Words.Figures);

    private static IEnumerable<string> Results(Calculator calculator) =>
        calculator
            .Answer(Given.NothingTo(calculator))
            .Value.Results.Select(result =>
                Words.Calculator("result." + result.Name)
                + (result.Value.Measure.First.Symbol is { Length: > 0 } unit ? $" ({unit})" : "")
            );
}
