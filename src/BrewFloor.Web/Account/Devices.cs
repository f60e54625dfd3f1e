namespace BrewFloor.Web.Account;

/// <summary>What somebody is signed in with, as far as it can be told without knowing who made it: "Phone".</summary>
internal static class Devices
{
    /// <summary>A word that stands in texts too; whoever holds it gives a better name to its passkey.</summary>
    /// <param name="userAgent">Browsers on anything that fits a hand say "Mobi" in it.</param>
    public static string Of(string userAgent) =>
        userAgent switch
        {
            "" => "",
            _ when userAgent.Contains("Mobi", StringComparison.Ordinal) => "Phone",
            _ when userAgent.Contains("Mozilla", StringComparison.Ordinal) => "Computer or tablet",
            _ => "",
        };
}
