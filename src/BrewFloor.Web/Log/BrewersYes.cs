using System.Diagnostics;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.People;
using BrewFloor.Store.People;
using BrewFloor.Web.Account;
using BrewFloor.Web.Shell;

namespace BrewFloor.Web.Log;

/// <summary>Who says yes to what is allowed beforehand: whoever is signed in, if they may; else a brewer with their own passkey or password.</summary>
public sealed class BrewersYes(SignIns signIns, PasskeyDoor passkeys, Wording wording)
{
    public static bool IsAsked(string kind, Author author) => kind is "allowed" && author.Role < Role.Brewer;

    /// <summary>What a brewer's passkey answered to the question that <see cref="PasskeyFor.SayingYes"/> asks.</summary>
    /// <param name="entry">The id of the entry that it was asked for.</param>
    /// <returns>The brewer; or the sentence that says why not.</returns>
    public async Task<(Author? Brewer, string? Problem)> HearAsync(
        HttpContext http,
        string? entry,
        string credential,
        string? state
    )
    {
        var yes = PasskeyFor.SayingYes(Policies.IdOf(http.User), entry);
        if (await passkeys.UsedAsync(http, credential, state, yes) is { } person)
        {
            return Yes(person);
        }

        await http.NoteAsync(SecurityKind.SignInFailed, detail: "passkey");
        return (null, wording["allow-brewer-passkey-failed"]);
    }

    /// <summary>A wrong password counts as one at the sign-in does, and closes the account for a while.</summary>
    /// <returns>The brewer; or the sentence that says why not.</returns>
    public async Task<(Author? Brewer, string? Problem)> AskAsync(HttpContext http, string? name, string? password)
    {
        var helper = Policies.IdOf(http.User);
        var tried = await signIns.TryAsync(name ?? "", password ?? "", $"person {helper}", http.RequestAborted);
        switch (tried)
        {
            case SignInTry.Welcome(var person):
                return Yes(person);
            case SignInTry.Locked(var until):
                return (null, wording["sign-in-locked", new Number("until", until)]);
            case SignInTry.TooFast(var wait):
                return (null, wording["sign-in-wait", new Number("seconds", Math.Ceiling(wait.TotalSeconds))]);
            case SignInTry.Wrong wrong:
                await http.NoteWrongAsync(wrong);
                return (null, wording["sign-in-wrong"]);
            default:
                throw new UnreachableException();
        }
    }

    private (Author? Brewer, string? Problem) Yes(Person person) =>
        person is { Role: >= Role.Brewer, MustChangePassword: false }
            ? (new Author(person.Id, person.Role), null)
            : (null, wording["allow-brewer-not"]);
}
