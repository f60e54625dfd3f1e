using BrewFloor.Domain.Log;
using BrewFloor.Domain.People;
using BrewFloor.Store.House;
using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Account;

/// <summary>What isn't needed every hour: the reader's own settings, and what is done to the floor itself.</summary>
public sealed partial class MorePage(Wording wording, Cautions cautions)
{
    private static readonly (string Value, string Key)[] ThemeChoices =
    [
        ("light", "theme-light"),
        ("dark", "theme-dark"),
        ("sunlight", "theme-sunlight"),
        ("device", "theme-as-device"),
    ];

    private IReadOnlyList<WavedThrough> _idle = [];

    [CascadingParameter]
    public required HttpContext Http { get; set; }

    // House rules are the owner's to change.
    protected override async Task OnInitializedAsync() =>
        _idle =
            Policies.RoleOf(Http.User) is Role.Owner
                ? [.. (await cautions.WavedThroughAsync(Http.RequestAborted)).Where(caution => caution.IsProposedOff)]
                : [];

    private string CautionName(WavedThrough caution) => wording.Head(Objection.Caution(caution.Code));
}
