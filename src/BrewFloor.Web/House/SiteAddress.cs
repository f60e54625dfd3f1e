using BrewFloor.Brewing;

namespace BrewFloor.Web.House;

/// <summary>Where browsers open this floor, as its labels say it: absolute, http or https.</summary>
internal static class SiteAddress
{
    private const int Longest = 120; // a code with more in it prints too fine to be read through condensation

    /// <summary>Reads what an owner typed. A path is kept: the floor may stand below one.</summary>
    public static Outcome<string> Parse(string? typed)
    {
        var text = (typed ?? "").Trim().TrimEnd('/');
        if (text.Length == 0)
        {
            return new Refusal("missing", "address", "", "");
        }

        if (text.Length > Longest)
        {
            return new Refusal("too-long", "address", $"{text.Length}", $"{Longest}");
        }

        return IsOpenable(text) ? text : new Refusal("not-an-address", "address", "", "");
    }

    private static bool IsOpenable(string text) =>
        Uri.TryCreate(text, UriKind.Absolute, out var address)
        && address is { Scheme: "http" or "https", Host.Length: > 0, Query: "", Fragment: "", UserInfo: "" }
        && !text.Any(c => char.IsWhiteSpace(c) || char.IsControl(c) || c is '?' or '#' or '\\');
}
