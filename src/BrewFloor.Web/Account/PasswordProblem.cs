namespace BrewFloor.Web.Account;

/// <summary>What keeps a new password from being taken: its length, or that it is among the first to be tried.</summary>
internal static class PasswordProblem
{
    // One that falls within a million guesses is common: the lists of the library, and what is made of them.
    private const double Bits = 20;

    private const int Weighed = 64; // what follows makes it only better, and weighing takes longer and longer

    /// <param name="about">Words that would be tried for this person: their name, the club's.</param>
    /// <returns>The key of the sentence; null when it can be used.</returns>
    public static string? With(string? password, params IEnumerable<string?> about) =>
        password switch
        {
            null or { Length: < Passwords.Shortest } => "password-short",
            { Length: > Passwords.Longest } => "password-long",
            _ when IsCommon(password[..Math.Min(password.Length, Weighed)], about) => "password-common",
            _ => null,
        };

    private static bool IsCommon(string password, IEnumerable<string?> about) =>
        new Zxcvbn.Zxcvbn().EvaluatePassword(password, [.. about.OfType<string>(), "brewfloor"]).Entropy < Bits;
}
