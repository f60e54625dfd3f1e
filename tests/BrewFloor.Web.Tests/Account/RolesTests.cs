using System.Net;
using BrewFloor.Domain.People;
using BrewFloor.Web.Account;
using BrewFloor.Web.Api;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.AspNetCore.Routing.Patterns;
using Microsoft.AspNetCore.StaticAssets;
using static BrewFloor.Web.Tests.Account.WhoMayIn;

namespace BrewFloor.Web.Tests.Account;

/// <summary>Who gets in where: every endpoint of the app, against a table written by hand.</summary>
public sealed class RolesTests(FloorApp app) : IClassFixture<FloorApp>
{
    private IEnumerable<RouteEndpoint> Endpoints => app.Get<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>();

    [Fact]
    public void Every_endpoint_says_itself_who_may_in_and_says_what_the_table_says() =>
        Assert.Empty(Endpoints.SelectMany(Wrong));

    [Fact]
    public void The_table_names_nothing_that_is_gone()
    {
        var there = Endpoints.SelectMany(Calls).Select(call => call.Row).ToHashSet(StringComparer.Ordinal);

        Assert.DoesNotContain(Table.Keys, row => !there.Contains(row));
    }

    [Theory]
    [InlineData("/", null, "says nothing")]
    [InlineData("/", Policies.Helper, "says Helper")]
    [InlineData("/brand-new", Policies.Viewer, "is not in the table")]
    [InlineData("/", Policies.Viewer, null)]
    public void The_check_can_fail(string pattern, string? policy, string? wrong)
    {
        var builder = new RouteEndpointBuilder(_ => Task.CompletedTask, RoutePatternFactory.Parse(pattern), 0);
        if (policy is not null)
        {
            builder.Metadata.Add(new AuthorizeAttribute(policy));
        }

        var found = Wrong((RouteEndpoint)builder.Build()).ToArray();

        Assert.Equal(wrong is null, found.Length == 0);
        Assert.All(found, text => Assert.EndsWith(wrong!, text, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(null)]
    [InlineData(Role.Viewer)]
    [InlineData(Role.Helper)]
    [InlineData(Role.Brewer)]
    [InlineData(Role.Owner)]
    public async Task Everybody_gets_in_where_the_table_says_and_nowhere_else(Role? role)
    {
        using var browser = role is { } known ? app.As(known) : app.Stranger();

        Assert.Empty(await SurprisesAsync(browser, policy => LetsIn(policy, role), isToken: false));
    }

    [Theory]
    [InlineData("read", ApiPolicies.Read)]
    [InlineData("log", ApiPolicies.Log)]
    public async Task A_token_gets_in_where_its_scope_says_and_on_no_page(string scope, string policy)
    {
        using var program = await app.WithTokenAsync(scope);

        Assert.Empty(
            await SurprisesAsync(
                program,
                wanted => wanted is Anyone or ThisMachine || string.Equals(wanted, policy, StringComparison.Ordinal),
                isToken: true
            )
        );
    }

    [Fact]
    public async Task An_endpoint_that_forgot_its_policy_is_closed_even_to_the_owner_and_what_is_not_there_is_not_found()
    {
        var authorization = app.Get<IAuthorizationService>();
        var fallback = await app.Get<IAuthorizationPolicyProvider>().GetFallbackPolicyAsync();
        var owner = SignIns.PrincipalOf(app.Person(Role.Owner));
        var forgot = new DefaultHttpContext();
        forgot.SetEndpoint(
            new RouteEndpointBuilder(_ => Task.CompletedTask, RoutePatternFactory.Parse("/x"), 0).Build()
        );

        Assert.False((await authorization.AuthorizeAsync(owner, forgot, fallback!)).Succeeded);
        Assert.Equal(
            HttpStatusCode.NotFound,
            (await app.Stranger().GetAsync("/nothing-here", FloorApp.Stop)).StatusCode
        );
    }

    private static IEnumerable<string> Wrong(RouteEndpoint endpoint)
    {
        var said = Said(endpoint);
        foreach (var (_, _, row) in Calls(endpoint))
        {
            if (said is null && Table.GetValueOrDefault(row) is Nobody)
            {
                continue;
            }

            if (said is null)
            {
                yield return $"{row} says nothing";
            }
            else if (IsAsset(endpoint) ? said is not Anyone : !Table.ContainsKey(row))
            {
                yield return $"{row} is not in the table";
            }
            else if (!IsAsset(endpoint) && !string.Equals(Table[row], said, StringComparison.Ordinal))
            {
                yield return $"{row} says {said}";
            }
        }
    }

    private static string? Said(Endpoint endpoint) =>
        endpoint.Metadata.GetMetadata<IAllowAnonymous>() is not null
            ? Anyone
            : endpoint.Metadata.GetMetadata<IAuthorizeData>()?.Policy;

    private static bool IsAsset(Endpoint endpoint) =>
        endpoint.Metadata.GetMetadata<StaticAssetDescriptor>() is not null;

    private static IEnumerable<(string Method, string Pattern, string Row)> Calls(RouteEndpoint endpoint)
    {
        var pattern = "/" + endpoint.RoutePattern.RawText!.TrimStart('/');
        IReadOnlyList<string> methods = endpoint.Metadata.GetMetadata<IHttpMethodMetadata>()?.HttpMethods ?? ["GET"];
        return methods
            .Where(method => method is not "HEAD") // a GET without its body
            .Select(method =>
                (method, pattern, Table.ContainsKey($"{method} {pattern}") ? $"{method} {pattern}" : pattern)
            );
    }

    /// <summary>Every call there is, at an address that fits its pattern.</summary>
    internal static IEnumerable<(string Method, string Address)> CallsOf(EndpointDataSource endpoints) =>
        endpoints
            .Endpoints.OfType<RouteEndpoint>()
            .Where(endpoint => !IsAsset(endpoint))
            .SelectMany(Calls)
            .Select(call => (call.Method, Address(call.Pattern)));

    private static bool LetsIn(string policy, Role? role) =>
        policy switch
        {
            Anyone or ThisMachine => true,
            ApiPolicies.Read => role is not null,
            ApiPolicies.Log or Nobody => false,
            _ => role >= Enum.Parse<Role>(policy),
        };

    private async Task<List<string>> SurprisesAsync(HttpClient client, Func<string, bool> letsIn, bool isToken)
    {
        var surprises = new List<string>();
        foreach (var (method, pattern, row) in Endpoints.Where(e => !IsAsset(e)).SelectMany(Calls))
        {
            using var request = new HttpRequestMessage(new HttpMethod(method), Address(pattern));
            using var answer = await client.SendAsync(
                request,
                HttpCompletionOption.ResponseHeadersRead, // the news never end
                FloorApp.Stop
            );
            var isKept = IsKeptOut(answer) || (Table[row] is Nobody && answer.StatusCode is HttpStatusCode.NotFound);
            if (isKept == letsIn(Table[row]) || (int)answer.StatusCode >= 500)
            {
                surprises.Add(
                    $"{method} {pattern}: {(int)answer.StatusCode} {answer.Headers.Location}{(isToken ? " by token" : "")}"
                );
            }
        }

        return surprises;
    }

    private static bool IsKeptOut(HttpResponseMessage answer) =>
        answer.StatusCode is HttpStatusCode.Unauthorized or HttpStatusCode.Forbidden
        || (
            answer.StatusCode is HttpStatusCode.Found
            && answer.Headers.Location?.OriginalString is { } to
            && (
                to.Contains("/sign-in?", StringComparison.Ordinal)
                || to.Contains("/not-yours?", StringComparison.Ordinal)
            )
        );

    private static string Address(string pattern) =>
        string.Join(
            '/',
            pattern
                .Split('/')
                .Select(part =>
                    !part.StartsWith('{') ? part
                    : part.Contains(":guid", StringComparison.Ordinal) ? "018f0000-0000-7000-8000-00000000e001"
                    : part.Contains(":int", StringComparison.Ordinal) ? "1"
                    : part.EndsWith(":file}", StringComparison.Ordinal) ? "noted.txt"
                    : part.EndsWith(".json", StringComparison.Ordinal) ? "v1.json"
                    : "noted"
                )
        );
}
