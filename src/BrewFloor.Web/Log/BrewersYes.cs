using System.Diagnostics;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.People;
using BrewFloor.Web.Account;
using BrewFloor.Web.Shell;

namespace BrewFloor.Web.Log;

/// <summary>Who says yes to what is allowed beforehand: whoever is signed in, if they may; else a brewer with their own password.</summary>
public sealed class BrewersYes(SignIns signIns, Wording wording)
{
    public static bool IsAsked(string kind, Author author) => kind is "allowed" && author.Role < Role.Brewer;

    /// <summary>A wrong password counts as one at the sign-in does, and closes the account for a while.</summary>
    /// <returns>The brewer; or the sentence that says why not.</returns>
    public async Task<(Author? Brewer, string? Problem)> AskAsync(HttpContext http, string? name, string? password)
    {
        var helper = Policies.IdOf(http.User);
        var tried = await signIns.TryAsync(name ?? "", password ?? "", $"person {helper}", http.RequestAborted);
        switch (tried)
        {
            case SignInTry.Welcome { Person: { Role: >= Role.Brewer, MustChangePassword: false } person }:
                return (new Author(person.Id, person.Role), null);
            case SignInTry.Welcome:
                return (null, wording["allow-brewer-not"]);
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
}
