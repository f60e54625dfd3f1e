using BrewFloor.Web.Hosting;

namespace BrewFloor.Web.Tests.Hosting;

public class StartOptionsTests
{
    [Fact]
    public void Without_words_it_serves_on_8080() => Assert.Equal(("serve", 8080), (Parse().Command, Parse().Port));

    [Fact]
    public void A_short_command_keeps_its_words_and_options()
    {
        var options = Parse("user", "add", "Ines", "--role", "brewer", "--data", "/tmp/floor");

        Assert.Equal(("user", "brewer", "/tmp/floor"), (options.Command, options.Named["--role"], options.DataFolder));
        Assert.Equal(["add", "Ines"], options.Words);
    }

    [Theory]
    [InlineData("--prot", "9000")]
    [InlineData("--port", "many")]
    [InlineData("--port", "70000")]
    [InlineData("--port")]
    public void What_cannot_be_read_is_a_sentence(params string[] args) =>
        Assert.Throws<StartProblemException>(() => Parse(args));

    [Fact]
    public void The_demo_is_not_opened_to_the_network_unasked()
    {
        Assert.Throws<StartProblemException>(() => Parse("--demo", "--lan"));
        Assert.True(Parse("--demo-open", "--lan") is { IsDemo: true, IsOnLan: true });
    }

    private static StartOptions Parse(params string[] args) => StartOptions.Parse(args, _ => null);
}
