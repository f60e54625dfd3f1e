using BrewFloor.Domain.People;
using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Account;

/// <summary>One of the four roles, each with what it may.</summary>
public sealed partial class RoleChoice(Wording wording)
{
    [Parameter]
    public string? Chosen { get; set; }

    /// <summary>What was chosen; only one of those that were offered.</summary>
    public static bool Reads(string? text, out Role role) =>
        Enum.TryParse(text, out role) && Enum.IsDefined(role) && !char.IsAsciiDigit(text![0]);
}
