using System.Globalization;
using BrewFloor.Web.Hosting;

namespace BrewFloor.Web.Account;

/// <summary>How often a program may call with one token within a minute.</summary>
public sealed record TokenPace(int CallsAMinute)
{
    public const string Variable = "BREWFLOOR_TOKEN_CALLS";

    /// <summary>Ten calls a second.</summary>
    public const int Usual = 600;

    private const int Most = 1_000_000;

    /// <exception cref="StartProblemException">Not a number of calls that is allowed.</exception>
    public static TokenPace Read(string? text) =>
        string.IsNullOrWhiteSpace(text) ? new(Usual)
        : int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var calls) && calls is > 0 and <= Most
            ? new(calls)
        : throw new StartProblemException($"{Variable} must be 1 to {Most}, not \"{text}\".");
}
