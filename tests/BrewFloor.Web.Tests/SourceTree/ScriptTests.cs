namespace BrewFloor.Web.Tests.SourceTree;

/// <summary>No failure is swallowed on the way from a tool to the exit code, and nothing is published twice.</summary>
public sealed class ScriptTests : IDisposable
{
    private readonly FloorScript _script = new();

    public void Dispose() => _script.Dispose();

    [Fact]
    public async Task When_all_is_well_the_last_line_is_the_tally_of_all_projects()
    {
        var ran = await _script.RunAsync("test");

        Assert.Equal((0, "18 passed, 0 failed, 6 skipped"), (ran.Code, ran.LastLine));
        Assert.Equal(
            ["tool", "csharpier", "build", "publish", "build-server", "ef", .. Enumerable.Repeat("test", 6)],
            FirstWords()
        );
    }

    [Theory]
    [InlineData("CHECK=1", "csharpier")]
    [InlineData("BUILD=1", "build")]
    [InlineData("MODEL=1", "ef")]
    public async Task A_step_that_fails_is_the_last_one(string told, string last)
    {
        var ran = await _script.RunAsync("test", told);

        Assert.Equal((1, last), (ran.Code, FirstWords()[^1]));
    }

    [Fact]
    public async Task A_failed_test_fails_the_run_after_all_projects_were_heard()
    {
        var ran = await _script.RunAsync("test", "TESTS=2", "FAILED=1");

        Assert.Equal((1, "18 passed, 6 failed, 6 skipped"), (ran.Code, ran.LastLine));
    }

    [Fact]
    public async Task Tests_that_end_badly_without_a_count_are_failed()
    {
        var ran = await _script.RunAsync("test Web", "TESTS=134");

        Assert.Equal((1, "3 passed, 1 failed, 1 skipped"), (ran.Code, ran.LastLine));
    }

    [Theory]
    [InlineData("TESTS=0")]
    [InlineData("TESTS=8")]
    public async Task A_project_that_ran_no_test_fails_the_run(string told)
    {
        var ran = await _script.RunAsync("test", told, "SILENT=tests/BrewFloor.Domain.Tests");

        Assert.Equal(1, ran.Code);
        Assert.Contains("Domain: no test ran.", ran.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Words_pick_tests_by_name()
    {
        await _script.RunAsync("test Domain tank left open");

        Assert.EndsWith("--filter-method *tank_left_open*", Assert.Single(_script.Calls), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_app_is_published_once()
    {
        var first = await _script.RunAsync("start --port 8081 --data there");
        var second = await _script.RunAsync("start --port 8081 --data there");

        Assert.Equal("app: serve --port 8081 --data there", first.Output);
        Assert.Equal(first.Output, second.Output);
        Assert.Single(FirstWords(), "publish");
    }

    [Fact]
    public async Task A_changed_source_is_published_again()
    {
        await _script.RunAsync("start");
        _script.Write("src/BrewFloor.Store/FloorDb.cs", "changed");
        await _script.RunAsync("start");

        Assert.Equal(2, FirstWords().Count(word => word is "publish"));
    }

    [Fact]
    public async Task What_could_not_be_published_is_never_started()
    {
        var first = await _script.RunAsync("start", "PUBLISH=1");
        var second = await _script.RunAsync("start", "PUBLISH=1");

        Assert.Equal((1, ""), (first.Code, first.Output));
        Assert.Equal((1, ""), (second.Code, second.Output));
    }

    [Fact]
    public async Task The_data_folder_is_the_one_typed_else_the_one_set()
    {
        Assert.Equal("app: user list --data set", (await _script.RunAsync("user list", "BREWFLOOR_DATA=set")).Output);
        Assert.Equal(
            "app: backup file --data typed",
            (await _script.RunAsync("backup file --data typed", "BREWFLOOR_DATA=set")).Output
        );
    }

    [Theory]
    [InlineData("", 0)]
    [InlineData("help", 0)]
    [InlineData("brew", 2)]
    [InlineData("start --loud", 2)]
    [InlineData("start --port", 2)]
    [InlineData("user remove", 2)]
    [InlineData("test Kitchen", 2)]
    public async Task What_is_typed_wrong_gets_the_usage_and_code_2(string words, int code)
    {
        var ran = await _script.RunAsync(words);

        Assert.Equal(code, ran.Code);
        Assert.Contains("./brewfloor start", ran.Output + ran.Errors, StringComparison.Ordinal);
        Assert.Empty(_script.Calls);
    }

    private string[] FirstWords() => [.. _script.Calls.Select(call => call.Split(' ')[0])];
}
