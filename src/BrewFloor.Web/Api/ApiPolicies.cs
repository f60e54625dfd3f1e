using System.Security.Claims;
using BrewFloor.Domain.People;
using BrewFloor.Web.Account;
using Microsoft.AspNetCore.Authorization;

namespace BrewFloor.Web.Api;

/// <summary>Who may call what: a token by its scopes; a person who is signed in may read here, and writes on the pages.</summary>
/// <remarks>A cookie is sent by the browser whoever wrote the page that asks, so it never writes here.</remarks>
internal static class ApiPolicies
{
    public const string Read = "ApiRead";
    public const string Log = "ApiLog";

    public static void Add(AuthorizationOptions options)
    {
        options.AddPolicy(
            Read,
            policy => policy.RequireAuthenticatedUser().RequireAssertion(context => MayRead(context.User))
        );
        options.AddPolicy(
            Log,
            policy => policy.RequireAuthenticatedUser().RequireAssertion(context => HasScope(context.User, "log"))
        );
    }

    private static bool MayRead(ClaimsPrincipal user) =>
        user.HasClaim(claim => claim.Type is BearerTokens.TokenClaim)
            ? HasScope(user, "read")
            : Policies.RoleOf(user) >= Role.Viewer && !Policies.MustChange(user);

    private static bool HasScope(ClaimsPrincipal user, string scope) => user.HasClaim(BearerTokens.ScopeClaim, scope);
}
