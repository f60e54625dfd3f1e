using System.Globalization;
using System.Net.Http.Headers;
using System.Text;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using BrewFloor.Web.Tests.SourceTree;

namespace BrewFloor.Web.Tests.Api;

/// <summary>The commands of <c>docs/guide/api.md</c> do what the page says.</summary>
public sealed partial class GuideTests(FloorApp app) : IClassFixture<FloorApp>
{
    [Fact]
    public async Task Every_command_of_the_guide_is_answered_as_it_says()
    {
        await app.TankAsync("K3");
        var (_, token) = await app.TokenAsync("read", "log");
        var commands = Commands(Tree.Read("docs/guide/api.md")).ToArray();
        Assert.True(commands.Length >= 12, $"{commands.Length} commands");

        foreach (var command in commands)
        {
            using var request = Request(command, token);
            using var answer = await app.Stranger().SendAsync(request, FloorApp.Stop);
            var text = await answer.Content.ReadAsStringAsync(FloorApp.Stop);
            Assert.True(
                (int)answer.StatusCode == command.Status,
                $"{command.Address}: {(int)answer.StatusCode} {text}"
            );
            Assert.NotNull(JsonNode.Parse(text));
        }

        Assert.Equal(4, await app.EntriesAsync());
    }

    [Fact]
    public void A_command_in_the_guide_is_read_with_its_address_its_body_and_its_answer()
    {
        const string Page = """
            ```sh
            # answers 422
            curl -H "Authorization: Bearer $TOKEN" "$FLOOR/api/v1/log" -d '{
              "id": 1
            }'
            curl -H "Authorization: Bearer $TOKEN" "$FLOOR/api/v1/tanks"
            ```
            """;

        Assert.Equal(
            [new Command("/api/v1/log", "{\n  \"id\": 1\n}", 422), new Command("/api/v1/tanks", "", 200)],
            Commands(Page.ReplaceLineEndings("\n"))
        );
    }

    private static IEnumerable<Command> Commands(string page) =>
        from block in Block().Matches(page)
        from call in Call().Matches(block.Groups["text"].Value)
        select new Command(
            call.Groups["address"].Value,
            call.Groups["body"].Value,
            call.Groups["status"] is { Success: true, Value: var status }
                ? int.Parse(status, CultureInfo.InvariantCulture)
                : 200
        );

    private static HttpRequestMessage Request(Command command, string token)
    {
        var request = new HttpRequestMessage(HttpMethod.Get, command.Address);
        request.Headers.Authorization = new AuthenticationHeaderValue("Bearer", token);
        if (command.Body.Length > 0)
        {
            request.Method = HttpMethod.Post;
            request.Content = new StringContent(command.Body, Encoding.UTF8, "application/json");
        }

        return request;
    }

    [GeneratedRegex("```sh\n(?<text>.*?)```", RegexOptions.Singleline | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Block();

    [GeneratedRegex(
        """(# answers (?<status>\d+)\n)?curl -H "Authorization: Bearer \$TOKEN"( -H "Content-Type: application/json")? "\$FLOOR(?<address>[^"]+)"( -d '(?<body>[^']+)')?""",
        RegexOptions.ExplicitCapture,
        1000
    )]
    private static partial Regex Call();

    private sealed record Command(string Address, string Body, int Status);
}
