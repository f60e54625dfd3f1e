using System.Globalization;
using System.Security.Claims;
using BrewFloor.Store.People;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;

namespace BrewFloor.Web.Account;

/// <summary>How a try to sign in ended.</summary>
public abstract record SignInTry
{
    private SignInTry() { }

    public sealed record Welcome(Person Person) : SignInTry;

    /// <summary>Name or password is wrong; which of them is not said.</summary>
    /// <param name="Account">Whose it would have been; null: nobody is called so.</param>
    /// <param name="IsLocked">With this one the account is closed for a while.</param>
    public sealed record Wrong(Guid? Account, bool IsLocked) : SignInTry;

    /// <summary>Too many wrong passwords under this name.</summary>
    public sealed record Locked(DateTimeOffset Until) : SignInTry;

    /// <summary>Too many wrong passwords from this address.</summary>
    public sealed record TooFast(TimeSpan Wait) : SignInTry;
}

/// <summary>Signing in and staying signed in: a cookie that lasts 30 days of use and ends with the password it was made under.</summary>
public sealed class SignIns(
    Accounts accounts,
    Sessions sessions,
    Passwords passwords,
    Guessing guessing,
    TimeProvider clock
)
{
    /// <summary>A cookie that isn't used for so long is worth nothing.</summary>
    public static readonly TimeSpan Lasts = TimeSpan.FromDays(30);

    // Who is let go is out within a minute, on pages that are open too.
    private static readonly TimeSpan BetweenLooks = TimeSpan.FromSeconds(30);

    /// <param name="place">Where it is tried from: an address; or who is signed in where it is asked.</param>
    public async Task<SignInTry> TryAsync(string name, string password, string place, CancellationToken stop)
    {
        var account = await accounts.ByNameAsync(name, stop);
        if (await guessing.BeginAsync(name, account, place, stop) is { } wait)
        {
            return wait;
        }

        if (!passwords.Fits(account?.PasswordHash, password) || account is not { IsActive: true })
        {
            return new SignInTry.Wrong(account?.Id, await IsLockedAsync(account, stop));
        }

        await guessing.RightAsync(account, place, stop);
        return new SignInTry.Welcome(account);
    }

    private async Task<bool> IsLockedAsync(Person? account, CancellationToken stop) =>
        account is not null
        && await accounts.ByIdAsync(account.Id, stop) is { LockedUntil: { } until }
        && until > clock.GetUtcNow();

    /// <summary>Signs this browser in; one that is signed in as the same person already keeps its session.</summary>
    public async Task SignInAsync(HttpContext http, Person account)
    {
        var stands = SessionOf(http.User) is { } known && Policies.IdOf(http.User) == account.Id ? known : (Guid?)null;
        var session = stands ?? await BeginAsync(http, account.Id);
        if (stands is null)
        {
            await http.NoteByAsync(
                account.Id,
                SecurityKind.SignedIn,
                Devices.Of(http.Request.Headers.UserAgent.ToString())
            );
        }

        await http.SignInAsync(
            CookieAuthenticationDefaults.AuthenticationScheme,
            PrincipalOf(account, session),
            new AuthenticationProperties { IsPersistent = true }
        );
    }

    /// <summary>A new session in any case: what was signed in before has just been ended.</summary>
    public async Task SignInAnewAsync(HttpContext http, Person account)
    {
        await sessions.EndAsync(account.Id, only: null, but: null, clock.GetUtcNow(), http.RequestAborted);
        await http.SignInAsync(
            CookieAuthenticationDefaults.AuthenticationScheme,
            PrincipalOf(account, await BeginAsync(http, account.Id)),
            new AuthenticationProperties { IsPersistent = true }
        );
    }

    /// <summary>The session of who is signed in; null for a stranger, and for a cookie from before sessions were kept.</summary>
    public static Guid? SessionOf(ClaimsPrincipal user) =>
        Guid.TryParse(user.FindFirstValue(Policies.SessionClaim), out var id) ? id : null;

    public static ClaimsPrincipal PrincipalOf(Person account, Guid? session = null)
    {
        var preferences = Preferences.Of(account);
        return new(
            new ClaimsIdentity(
                [
                    new(ClaimTypes.NameIdentifier, account.Id.ToString()),
                    new(ClaimTypes.Name, account.Name),
                    new(Policies.RoleClaim, account.Role.ToString()),
                    new(Policies.StampClaim, account.SecurityStamp.ToString()),
                    new(Policies.UnitsClaim, preferences.Units ?? ""),
                    new(Policies.LanguageClaim, preferences.Language ?? ""),
                    .. session is { } id ? [new Claim(Policies.SessionClaim, id.ToString())] : Array.Empty<Claim>(),
                    .. account.MustChangePassword
                        ? [new Claim(Policies.MustChangeClaim, "true")]
                        : Array.Empty<Claim>(),
                ],
                CookieAuthenticationDefaults.AuthenticationScheme
            )
        );
    }

    /// <summary>Asks every half minute whether account and session still stand: who is let go is gone within that time.</summary>
    public static async Task StillStandsAsync(CookieValidatePrincipalContext context)
    {
        var services = context.HttpContext.RequestServices;
        var now = services.GetRequiredService<TimeProvider>().GetUtcNow();
        var checkedAt = context.Properties.GetString("checked");
        if (
            checkedAt is not null
            && DateTimeOffset.TryParse(checkedAt, CultureInfo.InvariantCulture, out var last)
            && now - last < BetweenLooks
            && !services.GetRequiredService<PeopleChanged>().IsSince(Policies.IdOf(context.Principal!), last)
        )
        {
            return;
        }

        if (await services.GetRequiredService<SignIns>().AnewAsync(context) is not { } anew)
        {
            context.RejectPrincipal();
            await context.HttpContext.SignOutAsync(CookieAuthenticationDefaults.AuthenticationScheme);
            return;
        }

        context.ReplacePrincipal(anew);
        context.Properties.SetString("checked", now.ToString("O", CultureInfo.InvariantCulture));
        context.ShouldRenew = true;
    }

    // Null: the account or this session of it was ended.
    private async Task<ClaimsPrincipal?> AnewAsync(CookieValidatePrincipalContext context)
    {
        var (http, user) = (context.HttpContext, context.Principal!);
        var account = await accounts.ByIdAsync(Policies.IdOf(user), http.RequestAborted);
        var stamp = user.FindFirstValue(Policies.StampClaim);
        if (
            account is not { IsActive: true }
            || !string.Equals(stamp, account.SecurityStamp.ToString(), StringComparison.Ordinal)
        )
        {
            return null;
        }

        if (SessionOf(user) is not { } session)
        {
            return PrincipalOf(account, await BeginAsync(http, account.Id));
        }

        var isSeen = await sessions.SeenAsync(
            session,
            account.Id,
            AddressOf(http),
            clock.GetUtcNow(),
            http.RequestAborted
        );
        return isSeen ? PrincipalOf(account, session) : null;
    }

    private Task<Guid> BeginAsync(HttpContext http, Guid person) =>
        sessions.BeginAsync(
            person,
            Devices.Of(http.Request.Headers.UserAgent.ToString()),
            AddressOf(http),
            clock.GetUtcNow(),
            http.RequestAborted
        );

    private static string AddressOf(HttpContext http) => http.Connection.RemoteIpAddress?.ToString() ?? "";
}
