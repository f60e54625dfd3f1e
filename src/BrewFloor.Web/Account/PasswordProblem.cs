namespace BrewFloor.Web.Account;

/// <summary>What keeps a new password from being taken: only its length.</summary>
internal static class PasswordProblem
{
    /// <returns>The key of the sentence; null when it can be used.</returns>
    public static string? With(string? password) =>
        (password?.Length ?? 0) switch
        {
            < Passwords.Shortest => "password-short",
            > Passwords.Longest => "password-long",
            _ => null,
        };
}
