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
internal sealed record PasskeyMade(Guid Person, string Name, UserPasskeyInfo Info);

/// <summary>
/// Making and using passkeys (W3C Web Authentication) with ASP.NET Core Identity's own handler. What was asked travels with
/// the browser, sealed, so that whichever instance hears the answer can check it.
/// </summary>
internal sealed class PasskeyDoor(
    IPasskeyHandler<Person> handler,
    Passkeys passkeys,
    IDataProtectionProvider protection,
    TimeProvider clock
)
{
    private static readonly TimeSpan Answered = TimeSpan.FromMinutes(5);

    private readonly ITimeLimitedDataProtector _seal = protection
        .CreateProtector("BrewFloor.Passkeys")
        .ToTimeLimitedDataProtector();

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
        return Asked(asked.CreationOptionsJson, asked.AttestationState);
    }

    /// <summary>Asks for any that belongs here: whose it is, it says itself.</summary>
    public async Task<PasskeyAsked> AskToUseAsync(HttpContext http)
    {
        var asked = await handler.MakeRequestOptionsAsync(null, http);
        return Asked(asked.RequestOptionsJson, asked.AssertionState);
    }

    /// <returns>Null: it was not made for this, or too late.</returns>
    public async Task<PasskeyMade?> MadeAsync(HttpContext http, string? credential, string? state)
    {
        if (Opened(state) is not { } opened || credential is null or "")
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

    /// <returns>Whose it is; null: not one of ours, or too late.</returns>
    public async Task<Person?> UsedAsync(HttpContext http, string? credential, string? state)
    {
        if (Opened(state) is not { } opened || credential is null or "")
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

    private PasskeyAsked Asked(string options, string? state) =>
        new(System.Text.Json.Nodes.JsonNode.Parse(options)!, _seal.Protect(state ?? "", Answered));

    private string? Opened(string? state)
    {
        try
        {
            return state is { Length: > 0 } ? _seal.Unprotect(state) : null;
        }
        catch (CryptographicException)
        {
            return null; // made up, or too late
        }
    }
}
