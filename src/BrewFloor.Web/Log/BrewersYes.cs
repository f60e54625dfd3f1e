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
    /// <param name="helper">On whose phone.</param>
    /// <returns>The brewer; or the sentence that says why not.</returns>
    public async Task<(Author? Brewer, string? Problem)> AskAsync(
        string? name,
        string? password,
        Guid helper,
        CancellationToken stop
    ) =>
        await signIns.TryAsync(name ?? "", password ?? "", $"person {helper}", stop) switch
        {
            SignInTry.Welcome { Person: { Role: >= Role.Brewer, MustChangePassword: false } person } => (
                new Author(person.Id, person.Role),
                null
            ),
            SignInTry.Welcome => (null, wording["allow-brewer-not"]),
            SignInTry.Locked(var until) => (null, wording["sign-in-locked", new Number("until", until)]),
            SignInTry.TooFast(var wait) => (
                null,
                wording["sign-in-wait", new Number("seconds", Math.Ceiling(wait.TotalSeconds))]
            ),
            _ => (null, wording["sign-in-wrong"]),
        };
}
