using System.Security.Claims;
using System.Text.Encodings.Web;
using BrewFloor.Domain.People;
using BrewFloor.Store.People;
using BrewFloor.Web.Account;
using Microsoft.AspNetCore.Authentication;
using Microsoft.Extensions.Options;

namespace BrewFloor.Web.Api;

/// <summary>Lets programs in by <c>Authorization: Bearer</c>. A token with the scope log writes as a helper would, any other only reads.</summary>
internal sealed class BearerTokens(
    IOptionsMonitor<AuthenticationSchemeOptions> options,
    ILoggerFactory logger,
    UrlEncoder encoder,
    Tokens tokens
) : AuthenticationHandler<AuthenticationSchemeOptions>(options, logger, encoder)
{
    public const string Known = "Bearer";
    public const string TokenClaim = "token";
    public const string ScopeClaim = "scope";

    private const string Prefix = Known + " ";

    /// <summary>A token is meant for what programs use. Pages are for people: there it is as if it weren't sent.</summary>
    public static bool AreUsedIn(HttpRequest request) =>
        (
            request.Path.StartsWithSegments("/api", StringComparison.OrdinalIgnoreCase)
            || request.Path.StartsWithSegments("/live", StringComparison.OrdinalIgnoreCase)
            || request.Path.StartsWithSegments(Hosting.Metrics.Address, StringComparison.OrdinalIgnoreCase)
        ) && SecretIn(request) is not null;

    protected override async Task<AuthenticateResult> HandleAuthenticateAsync()
    {
        if (SecretIn(Request) is not { } secret)
        {
            return AuthenticateResult.NoResult();
        }

        return await tokens.VerifyAsync(secret, Context.RequestAborted) is { } token
            ? AuthenticateResult.Success(new(PrincipalOf(token), Scheme.Name))
            : AuthenticateResult.Fail("No such token, or it was revoked.");
    }

    protected override Task HandleChallengeAsync(AuthenticationProperties properties)
    {
        Response.StatusCode = StatusCodes.Status401Unauthorized;
        Response.Headers.WWWAuthenticate = Known;
        return Task.CompletedTask;
    }

    internal static string? SecretIn(HttpRequest request) =>
        request.Headers.Authorization is [{ } header] && header.StartsWith(Prefix, StringComparison.OrdinalIgnoreCase)
            ? header[Prefix.Length..].Trim()
            : null;

    private static ClaimsPrincipal PrincipalOf(Token token) =>
        new(
            new ClaimsIdentity(
                [
                    new(ClaimTypes.NameIdentifier, token.Id.ToString()),
                    new(ClaimTypes.Name, token.Name),
                    new(TokenClaim, token.Id.ToString()),
                    new(
                        Policies.RoleClaim,
                        (token.Scopes.Contains("log", StringComparer.Ordinal) ? Role.Helper : Role.Viewer).ToString()
                    ),
                    .. token.Scopes.Select(scope => new Claim(ScopeClaim, scope)),
                ],
                Known
            )
        );
}
