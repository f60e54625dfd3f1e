using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Log;

/// <summary>On somebody else's device: the brewer who stands beside it says yes with their own passkey or password.</summary>
public sealed partial class BrewerPart(Wording wording)
{
    internal const string NameField = "brewer.name";
    internal const string PasswordField = "brewer.password";
    internal const string CredentialField = "brewer.credential";
    internal const string StateField = "brewer.state";

    /// <summary>As typed; the password never comes back.</summary>
    [Parameter]
    public string? Name { get; set; }

    [Parameter]
    public string? Problem { get; set; }
}
