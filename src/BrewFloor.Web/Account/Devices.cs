using BrewFloor.Web.Shell;

namespace BrewFloor.Web.Account;

/// <summary>What somebody is signed in with, as far as it can be told without knowing who made it.</summary>
internal static class Devices
{
    /// <summary>As it is stored; never changed, and shown by its text.</summary>
    public const string Phone = "Phone";

    /// <inheritdoc cref="Phone"/>
    public const string Computer = "Computer or tablet";

    /// <param name="userAgent">Browsers on anything that fits a hand say "Mobi" in it.</param>
    /// <returns>Empty: not a browser.</returns>
    public static string Of(string userAgent) =>
        userAgent switch
        {
            "" => "",
            _ when userAgent.Contains("Mobi", StringComparison.Ordinal) => Phone,
            _ when userAgent.Contains("Mozilla", StringComparison.Ordinal) => Computer,
            _ => "",
        };

    /// <summary>The same in the reader's words.</summary>
    public static string Shown(string device, Wording words) =>
        device switch
        {
            Phone => words["device-phone"],
            Computer => words["device-computer"],
            _ => words["access-device-unknown"],
        };
}
