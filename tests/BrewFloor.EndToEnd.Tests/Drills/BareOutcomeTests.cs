using BrewFloor.Benchmarks.Drills;

namespace BrewFloor.EndToEnd.Tests.Drills;

/// <summary>What the drill of the bare machine makes of what its script said; the drill itself takes too long for a test.</summary>
public class BareOutcomeTests
{
    [Fact]
    public void Both_commands_came_to_their_end()
    {
        var outcome = BareOutcome.Read([
            "Installing",
            "bare: first 146",
            "bare: second 4",
            "bare: test 1083 0 3600 passed, 0 failed, 0 skipped",
        ]);

        Assert.True(outcome.IsPassed);
        Assert.Equal(["2 min 26 s", "0 min 4 s", "18 min 3 s: 3600 passed, 0 failed, 0 skipped"], Found(outcome));
    }

    [Theory]
    [InlineData("bare: first 146", "bare: second 4")]
    [InlineData("bare: first ended by itself", "bare: second 4", "bare: test 9 0 1 passed, 0 failed, 0 skipped")]
    [InlineData("bare: first 146", "bare: second 4", "bare: test 9 1 1 passed, 1 failed, 0 skipped")]
    [InlineData(
        "bare: first 146",
        "bare: first went on after it was stopped",
        "bare: second 4",
        "bare: test 9 0 1 passed, 0 failed, 0 skipped"
    )]
    [InlineData("Something answers on port 8080 already")]
    public void Whatever_did_not_come_about_fails_it(params string[] said) =>
        Assert.False(BareOutcome.Read(said).IsPassed);

    private static IEnumerable<string> Found(BareOutcome outcome) => outcome.Rows.Select(row => row.Found);
}
