namespace BrewFloor.Brewing.Tests;

/// <summary>How much of the library is held against print, and how much against arithmetic alone.</summary>
public class CountsTests(ITestOutputHelper output)
{
    [Fact]
    public void At_least_a_hundred_published_values_are_tested_a_table_counting_for_fifteen_at_most()
    {
        output.WriteLine(Counts.Table(Check.All.Values));

        var all = Counts.Published(Check.All.Values);
        Assert.True(all >= 100, $"{all} published values");
    }

    [Fact]
    public void The_page_of_checks_is_the_one_made_from_them()
    {
        var made = Counts.Page([.. Check.All.Values]);
        var samples = Path.Combine(AppContext.BaseDirectory, "samples");

        if (!string.Equals(File.ReadAllText(Path.Combine(samples, "checks.md")), made, StringComparison.Ordinal))
        {
            File.WriteAllText(Path.Combine(samples, "fresh.md"), made);
            Assert.Fail(
                "differs: cp artifacts/bin/BrewFloor.Brewing.Tests/debug/samples/fresh.md docs/science/checks.md"
            );
        }
    }

    [Fact]
    public void A_long_table_counts_for_fifteen_and_nothing_else_counts_as_published()
    {
        var row = new Check("EX-99", "", "", "1; 2; 3; 4; 5; 6; 7; 8; 9; 10", "0", "one table")
        {
            Provenance = "published",
        };

        Assert.Equal(15, Counts.Published([row, row with { Id = "EX-98" }]));
        Assert.Equal(20, Counts.Published([row, row with { Source = "another" }]));
        Assert.Equal(0, Counts.Published([row with { Provenance = "from-memory" }]));
    }

    [Fact]
    public void Every_check_has_a_subject_and_a_known_provenance() =>
        Assert.All(
            Check.All.Values,
            check =>
            {
                Assert.Contains(check.Id[..2], Counts.Subjects.Keys);
                Assert.Contains(check.Provenance, Counts.Provenances);
            }
        );
}
