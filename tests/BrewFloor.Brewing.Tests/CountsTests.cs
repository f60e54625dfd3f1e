namespace BrewFloor.Brewing.Tests;

/// <summary>How much of the library is held against print, and how much against arithmetic alone.</summary>
public class CountsTests(ITestOutputHelper output)
{
    private const int MostOfATable = 15;

    // The printed sugar table beside the checks; Zoecklein's print of the same numbers counts into the same fifteen.
    private const string SugarTable = "sugar table";

    private static readonly string[] Provenances =
    [
        "published",
        "computed-independently",
        "common-practice",
        "from-memory",
    ];

    private static readonly Dictionary<string, string> Subjects = new(StringComparer.Ordinal)
    {
        ["EX"] = "extract and alcohol; nothing more in print at hand",
        ["CO"] = "carbonation; no print of beer above 8 °C",
        ["KI"] = "fermentation and creep; no open data set was seen as a table",
        ["YE"] = "yeast; storage: three points of one strain",
        ["GE"] = "tanks; dishes and flanges only computed or from memory",
        ["CI"] = "cleaning and hazards; concentrations and times are practice",
        ["OX"] = "oxygen; targets are practice",
        ["HE"] = "heat; heat of fermentation and U are practice",
        ["VO"] = "volumes and units",
        ["TR"] = "transfers; only computed",
        ["TT"] = "monthly report",
        ["PA"] = "passivation; treatments but for their strength from memory",
        ["DH"] = "dry hops; no primary source for the loss",
        ["RO"] = "room air; only computed (its limits stand under cleaning)",
    };

    [Fact]
    public void At_least_a_hundred_published_values_are_tested_a_table_counting_for_fifteen_at_most()
    {
        output.WriteLine("subject  published  computed  practice  memory");
        foreach (var (prefix, what) in Subjects)
        {
            var (published, computed) = (Counted(prefix, "published"), Counted(prefix, "computed-independently"));
            var (practice, memory) = (Counted(prefix, "common-practice"), Counted(prefix, "from-memory"));
            output.WriteLine($"{prefix, -7} {published, 10} {computed, 9} {practice, 9} {memory, 7}  {what}");
        }

        var all = Published(Check.All.Values);
        output.WriteLine($"published in all, a table at most {MostOfATable}: {all}");
        Assert.True(all >= 100, $"{all} published values");
    }

    [Fact]
    public void A_long_table_counts_for_fifteen_and_nothing_else_counts_as_published()
    {
        var row = new Check("EX-99", "", "", "1; 2; 3; 4; 5; 6; 7; 8; 9; 10", "0", "one table")
        {
            Provenance = "published",
        };

        Assert.Equal(15, Published([row, row with { Id = "EX-98" }]));
        Assert.Equal(20, Published([row, row with { Source = "another" }]));
        Assert.Equal(0, Published([row with { Provenance = "from-memory" }]));
    }

    [Fact]
    public void Every_check_has_a_subject_and_a_known_provenance() =>
        Assert.All(
            Check.All.Values,
            check =>
            {
                Assert.Contains(check.Id[..2], Subjects.Keys);
                Assert.Contains(check.Provenance, Provenances);
            }
        );

    private static int Counted(string prefix, string provenance) =>
        Check
            .All.Values.Where(c => c.Id.StartsWith(prefix, StringComparison.Ordinal))
            .Where(c => c.Provenance.Equals(provenance, StringComparison.Ordinal))
            .Sum(c => c.Values);

    private static int Published(IEnumerable<Check> checks) =>
        checks
            .Where(c => c.Provenance.Equals("published", StringComparison.Ordinal))
            .GroupBy(c => c.Source.Contains("Zoecklein", StringComparison.Ordinal) ? SugarTable : c.Source)
            .Sum(table => Math.Min(MostOfATable, table.Sum(c => c.Values)));
}
