using System.Security.Claims;
using BrewFloor.Domain.People;
using Microsoft.AspNetCore.Authorization;

namespace BrewFloor.Web.Account;

/// <summary>Who may open what: a policy a role, each including the ones above it. Without a policy nothing opens.</summary>
public static class Policies
{
    public const string Viewer = nameof(Role.Viewer);
    public const string Helper = nameof(Role.Helper);
    public const string Brewer = nameof(Role.Brewer);
    public const string Owner = nameof(Role.Owner);

    public const string RoleClaim = "role";
    public const string StampClaim = "stamp";
    public const string SessionClaim = "session";
    public const string UnitsClaim = "units";
    public const string LanguageClaim = "language";
    public const string MustChangeClaim = "must-change";

    /// <summary>In with a password that works once: nothing but choosing another is open to them.</summary>
    public static bool MustChange(ClaimsPrincipal user) => user.HasClaim(MustChangeClaim, "true");

    public static void Add(AuthorizationOptions options)
    {
        foreach (var least in Enum.GetValues<Role>())
        {
            options.AddPolicy(
                least.ToString(),
                policy => policy.RequireAuthenticatedUser().RequireAssertion(context => RoleOf(context.User) >= least)
            );
        }

        // What forgot its policy is closed to everybody, so that it is noticed. What isn't there has nothing to close.
        options.FallbackPolicy = new AuthorizationPolicyBuilder()
            .RequireAssertion(context =>
                context.Resource is HttpContext http && http.GetEndpoint() is not RouteEndpoint
            )
            .Build();
    }

    /// <summary>The role of who is signed in; null for a stranger.</summary>
    public static Role? RoleOf(ClaimsPrincipal user) =>
        Enum.TryParse<Role>(user.FindFirstValue(RoleClaim), out var role) ? role : null;

    public static Guid IdOf(ClaimsPrincipal user) =>
        Guid.TryParse(user.FindFirstValue(ClaimTypes.NameIdentifier), out var id)
            ? id
            : throw new InvalidOperationException("Nobody is signed in: the page lacks its policy.");

    /// <summary>Who hands an entry in.</summary>
    public static Author AuthorOf(ClaimsPrincipal user) =>
        new(IdOf(user), RoleOf(user) ?? Role.Viewer, IsToken: user.HasClaim(claim => claim.Type is "token"));
}
