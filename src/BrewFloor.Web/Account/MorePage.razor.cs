using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Account;

/// <summary>What isn't needed every hour: the reader's own settings, and what is done to the floor itself.</summary>
public sealed partial class MorePage(Wording wording)
{
    private static readonly (string Value, string Key)[] ThemeChoices =
    [
        ("light", "theme-light"),
        ("dark", "theme-dark"),
        ("sunlight", "theme-sunlight"),
        ("device", "theme-as-device"),
    ];

    [CascadingParameter]
    public required HttpContext Http { get; set; }
}
