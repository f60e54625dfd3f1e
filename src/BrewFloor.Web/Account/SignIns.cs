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
    public sealed record Wrong : SignInTry;

    public sealed record Locked(DateTimeOffset Until) : SignInTry;
}

/// <summary>Signing in and staying signed in: a cookie that lasts 30 days of use and ends with the password it was made under.</summary>
public sealed class SignIns(Accounts accounts, Passwords passwords, TimeProvider clock)
{
    public const int TriesBeforeLocked = 5;
    public static readonly TimeSpan LockedFor = TimeSpan.FromMinutes(5);

    public async Task<SignInTry> TryAsync(string name, string password, CancellationToken stop)
    {
        var account = await accounts.ByNameAsync(name, stop);
        if (account?.LockedUntil is { } until && until > clock.GetUtcNow())
        {
            return new SignInTry.Locked(until);
        }

        if (!passwords.Fits(account?.PasswordHash, password) || account is not { IsActive: true })
        {
            if (account is not null)
            {
                await CountFailureAsync(account.Id, stop);
            }

            return new SignInTry.Wrong();
        }

        await accounts.SignedInAsync(account.Id, stop);
        return new SignInTry.Welcome(account);
    }

    private async Task CountFailureAsync(Guid id, CancellationToken stop)
    {
        if (await accounts.FailedAsync(id, stop) >= TriesBeforeLocked)
        {
            await accounts.LockAsync(id, clock.GetUtcNow() + LockedFor, stop);
        }
    }

    public static Task SignInAsync(HttpContext http, Person account) =>
        http.SignInAsync(
            CookieAuthenticationDefaults.AuthenticationScheme,
            PrincipalOf(account),
            new AuthenticationProperties { IsPersistent = true }
        );

    public static ClaimsPrincipal PrincipalOf(Person account) =>
        new(
            new ClaimsIdentity(
                [
                    new(ClaimTypes.NameIdentifier, account.Id.ToString()),
                    new(ClaimTypes.Name, account.Name),
                    new(Policies.RoleClaim, account.Role.ToString()),
                    new(Policies.StampClaim, account.SecurityStamp.ToString()),
                    new(Policies.UnitsClaim, Preferences.Of(account).Units ?? ""),
                    .. account.MustChangePassword
                        ? [new Claim(Policies.MustChangeClaim, "true")]
                        : Array.Empty<Claim>(),
                ],
                CookieAuthenticationDefaults.AuthenticationScheme
            )
        );

    /// <summary>Asks every minute whether the account still stands as it did: a role taken away is gone within that minute.</summary>
    public static async Task StillStandsAsync(CookieValidatePrincipalContext context)
    {
        var services = context.HttpContext.RequestServices;
        var now = services.GetRequiredService<TimeProvider>().GetUtcNow();
        var checkedAt = context.Properties.GetString("checked");
        if (
            checkedAt is not null
            && DateTimeOffset.TryParse(checkedAt, CultureInfo.InvariantCulture, out var last)
            && now - last < TimeSpan.FromMinutes(1)
        )
        {
            return;
        }

        var account = await services
            .GetRequiredService<Accounts>()
            .ByIdAsync(Policies.IdOf(context.Principal!), context.HttpContext.RequestAborted);
        if (
            account is not { IsActive: true }
            || !string.Equals(
                context.Principal!.FindFirstValue(Policies.StampClaim),
                account.SecurityStamp.ToString(),
                StringComparison.Ordinal
            )
        )
        {
            context.RejectPrincipal();
            await context.HttpContext.SignOutAsync(CookieAuthenticationDefaults.AuthenticationScheme);
            return;
        }

        context.ReplacePrincipal(PrincipalOf(account));
        context.Properties.SetString("checked", now.ToString("O", CultureInfo.InvariantCulture));
        context.ShouldRenew = true;
    }
}
