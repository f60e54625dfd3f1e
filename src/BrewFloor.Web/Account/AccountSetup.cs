using BrewFloor.Store.People;
using BrewFloor.Web.Api;
using BrewFloor.Web.Hosting;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Identity;

namespace BrewFloor.Web.Account;

/// <summary>Who may come in, and how they stay in.</summary>
public static class AccountSetup
{
    private const string CookieOrToken = "CookieOrToken";

    public static IServiceCollection AddAccounts(this IServiceCollection services)
    {
        services.AddSingleton<Passwords>().AddSingleton<SetupToken>().AddSingleton<SignIns>().AddSingleton<Arrivals>();
        services
            .AddSingleton<PeopleChanged>()
            .AddSingleton<Guessing>()
            .AddSingleton<Pace>()
            .AddSingleton<SecurityLog>();
        services.AddIdentityCore<Person>();
        services
            .AddScoped<IUserStore<Person>, PasskeyPeople>()
            .AddScoped<IPasskeyHandler<Person>, PasskeyHandler<Person>>()
            .AddScoped<PasskeyDoor>();
        // Discoverable: nobody types a name first. The lock of the device, so that a stolen one opens nothing.
        services.Configure<IdentityPasskeyOptions>(passkeys =>
            (passkeys.ResidentKeyRequirement, passkeys.UserVerificationRequirement) = ("required", "required")
        );
        AddSignIn(services);
        services.AddAuthorization(Policies.Add);
        return services;
    }

    private static void AddSignIn(IServiceCollection services) =>
        services
            .AddAntiforgery(form =>
                form.Cookie = new HouseCookie
                {
                    Name = "brewfloor-form",
                    HttpOnly = true,
                    IsEssential = true,
                    SameSite = SameSiteMode.Strict,
                }
            )
            .AddAuthentication(CookieOrToken)
            .AddPolicyScheme(
                CookieOrToken,
                displayName: null,
                either =>
                    either.ForwardDefaultSelector = http =>
                        BearerTokens.AreUsedIn(http.Request)
                            ? BearerTokens.Known
                            : CookieAuthenticationDefaults.AuthenticationScheme
            )
            .AddCookie(cookie =>
            {
                cookie.Cookie = new HouseCookie
                {
                    Name = "brewfloor",
                    HttpOnly = true,
                    SameSite = SameSiteMode.Lax,
                };
                cookie.ExpireTimeSpan = SignIns.Lasts;
                cookie.SlidingExpiration = true;
                cookie.LoginPath = "/sign-in";
                cookie.AccessDeniedPath = "/not-yours";
                cookie.ReturnUrlParameter = "returnUrl";
                cookie.Events.OnValidatePrincipal = SignIns.StillStandsAsync;
                cookie.Events.OnRedirectToLogin = context =>
                    AnswerOrRedirectAsync(context, StatusCodes.Status401Unauthorized);
                cookie.Events.OnRedirectToAccessDenied = context =>
                    AnswerOrRedirectAsync(context, StatusCodes.Status403Forbidden);
            });

    public static void MapSignOut(this IEndpointRouteBuilder routes) =>
        routes
            .MapGroup("")
            .TakesOurForms()
            .MapPost(
                "/sign-out",
                async (HttpContext http, Sessions sessions, TimeProvider clock) =>
                {
                    if (SignIns.SessionOf(http.User) is { } session)
                    {
                        var (person, now) = (Policies.IdOf(http.User), clock.GetUtcNow());
                        await sessions.EndAsync(person, session, but: null, now, http.RequestAborted);
                    }

                    await http.SignOutAsync(CookieAuthenticationDefaults.AuthenticationScheme);
                    return Results.LocalRedirect("~/sign-in");
                }
            )
            .RequireAuthorization(Policies.Viewer);

    /// <summary>Takes a link back that nobody has used yet.</summary>
    public static void MapInvites(this IEndpointRouteBuilder routes) =>
        routes
            .MapGroup("")
            .TakesOurForms()
            .MapPost(
                "/people/invites/revoke",
                async (HttpContext http, Invites invites, TimeProvider clock) =>
                {
                    var form = await http.Request.ReadFormAsync(http.RequestAborted);
                    if (Guid.TryParse(form["id"], out var id))
                    {
                        await invites.RevokeAsync(id, clock.GetUtcNow(), http.RequestAborted);
                        await http.NoteAsync(SecurityKind.InviteEnded);
                    }

                    return Results.LocalRedirect("~/people");
                }
            )
            .RequireAuthorization(Policies.Owner);

    /// <summary>Leads to what must be done first: a floor without an owner to the setup, a one-use password to a new one.</summary>
    public static IApplicationBuilder UseFirstSteps(this IApplicationBuilder app)
    {
        var hasOwner = false; // once there is one, there always is
        return app.Use(
            async (context, next) =>
            {
                var path = context.Request.Path;
                if (path == "/" || path == "/sign-in")
                {
                    hasOwner =
                        hasOwner
                        || await context
                            .RequestServices.GetRequiredService<FirstOwner>()
                            .ExistsAsync(context.RequestAborted);
                    if (!hasOwner)
                    {
                        context.Response.Redirect(context.Request.PathBase + "/setup");
                        return;
                    }
                }

                if (
                    Policies.MustChange(context.User)
                    && path != "/me/password"
                    && path != "/sign-out"
                    && !IsForPrograms(path)
                    && context.GetEndpoint()?.Metadata.GetMetadata<Microsoft.AspNetCore.Authorization.IAllowAnonymous>()
                        is null
                )
                {
                    context.Response.Redirect(context.Request.PathBase + "/me/password");
                    return;
                }

                await next(context);
            }
        );
    }

    // A program that is sent to a page reads it as an answer.
    private static Task AnswerOrRedirectAsync(RedirectContext<CookieAuthenticationOptions> context, int status)
    {
        if (IsForPrograms(context.Request.Path))
        {
            context.Response.StatusCode = status;
        }
        else
        {
            context.Response.Redirect(context.RedirectUri);
        }

        return Task.CompletedTask;
    }

    private static bool IsForPrograms(PathString path) =>
        path.StartsWithSegments("/api", StringComparison.OrdinalIgnoreCase)
        || path.StartsWithSegments(Hosting.Metrics.Address, StringComparison.OrdinalIgnoreCase);
}
