using BrewFloor.Store.Tests.Postgres;

namespace BrewFloor.Web.Tests.Hosting;

/// <summary>What whoever runs the floor types, in a process of its own.</summary>
public sealed class TokenCommandTests(TestServer server)
{
    [Fact]
    public async Task A_token_is_shown_once_and_its_name_is_taken_then()
    {
        var database = await server.NewDatabaseAsync(FloorApp.Stop);

        var (code, said) = await AddAsync(database.Owner, "gauge");
        Assert.True(code == 0 && said.Contains("bf_", StringComparison.Ordinal), said);

        Assert.Equal(
            (1, "A token is called Gauge already. Choose another name."),
            await AddAsync(database.Owner, "Gauge")
        );
    }

    [Fact]
    public async Task A_token_with_an_endless_name_gets_a_sentence()
    {
        var database = await server.NewDatabaseAsync(TestContext.Current.CancellationToken);

        Assert.Equal(
            (1, "A name has 1 to 80 characters. Choose another."),
            await AddAsync(database.Owner, new string('g', 81))
        );
    }

    private static Task<(int Code, string Said)> AddAsync(string connection, string name) =>
        AppCommand.RunAsync(
            new Dictionary<string, string>(StringComparer.Ordinal) { ["ConnectionStrings__BrewFloor"] = connection },
            "token",
            "add",
            name,
            "--scope",
            "read"
        );
}
