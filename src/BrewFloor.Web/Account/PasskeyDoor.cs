using System.Security.Cryptography;
using BrewFloor.Store.People;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Identity;

namespace BrewFloor.Web.Account;

/// <summary>What a browser is asked, and what must come back with its answer.</summary>
/// <param name="Options">JSON for <c>navigator.credentials</c>.</param>
/// <param name="State">Sealed; good for a few minutes.</param>
public sealed record PasskeyAsked(System.Text.Json.Nodes.JsonNode Options, string State);

/// <summary>A passkey that a device has made.</summary>
/// <param name="Person">Whom it was made for.</param>
public sealed record PasskeyMade(Guid Person, string Name, UserPasskeyInfo Info);

/// <summary>What an answer is good for, and for nothing else.</summary>
/// <param name="What">Also keeps its seal apart from all others'.</param>
public sealed record PasskeyFor(string What)
{
    public static readonly PasskeyFor Making = new("making");

    public static readonly PasskeyFor SigningIn = new("signing in");

    /// <summary>A brewer's yes to one entry on one helper's device: it signs nobody in, and says yes to nothing else.</summary>
    public static PasskeyFor SayingYes(Guid helper, string? entry) => new($"saying yes to {entry} of {helper}");
}

/// <summary>
/// Making and using passkeys (W3C Web Authentication) with ASP.NET Core Identity's own handler. What was asked travels with
/// the browser, sealed, so that whichever instance hears the answer can check it.
/// </summary>
public sealed class PasskeyDoor(
    IPasskeyHandler<Person> handler,
    Passkeys passkeys,
    IDataProtectionProvider protection,
    TimeProvider clock
)
{
    private static readonly TimeSpan Answered = TimeSpan.FromMinutes(5);

    /// <summary>Asks a device to make one.</summary>
    public async Task<PasskeyAsked> AskToMakeAsync(HttpContext http, Guid person, string name)
    {
        var asked = await handler.MakeCreationOptionsAsync(
            new()
            {
                Id = person.ToString(),
                Name = name,
                DisplayName = name,
            },
            http
        );
        return Asked(asked.CreationOptionsJson, asked.AttestationState, PasskeyFor.Making);
    }

    /// <summary>Asks for any that belongs here: whose it is, it says itself.</summary>
    public async Task<PasskeyAsked> AskToUseAsync(HttpContext http, PasskeyFor what)
    {
        var asked = await handler.MakeRequestOptionsAsync(null, http);
        return Asked(asked.RequestOptionsJson, asked.AssertionState, what);
    }

    /// <returns>Null: it was not made for this, or too late.</returns>
    public async Task<PasskeyMade?> MadeAsync(HttpContext http, string? credential, string? state)
    {
        if (Opened(state, PasskeyFor.Making) is not { } opened || credential is null or "")
        {
            return null;
        }

        var made = await handler.PerformAttestationAsync(
            new()
            {
                HttpContext = http,
                CredentialJson = credential,
                AttestationState = opened,
            }
        );
        return made.Succeeded && Guid.TryParse(made.UserEntity.Id, out var person)
            ? new(person, made.UserEntity.Name, made.Passkey)
            : null;
    }

    /// <returns>Whose it is; null: not one of ours, asked for something else, or too late.</returns>
    public async Task<Person?> UsedAsync(HttpContext http, string? credential, string? state, PasskeyFor what)
    {
        if (Opened(state, what) is not { } opened || credential is null or "")
        {
            return null;
        }

        var used = await handler.PerformAssertionAsync(
            new()
            {
                HttpContext = http,
                CredentialJson = credential,
                AssertionState = opened,
            }
        );
        if (!used.Succeeded || !used.User.IsActive)
        {
            return null;
        }

        await passkeys.UsedAsync(
            PasskeyPeople.ToPasskey(used.Passkey, name: ""),
            clock.GetUtcNow(),
            http.RequestAborted
        );
        return used.User;
    }

    private PasskeyAsked Asked(string options, string? state, PasskeyFor what) =>
        new(System.Text.Json.Nodes.JsonNode.Parse(options)!, Seal(what).Protect(state ?? "", Answered));

    private ITimeLimitedDataProtector Seal(PasskeyFor what) =>
        protection.CreateProtector("BrewFloor.Passkeys", what.What).ToTimeLimitedDataProtector();

    private string? Opened(string? state, PasskeyFor what)
    {
        try
        {
            return state is { Length: > 0 } ? Seal(what).Unprotect(state) : null;
        }
        catch (CryptographicException)
        {
            return null; // made up, or too late
        }
    }
}
