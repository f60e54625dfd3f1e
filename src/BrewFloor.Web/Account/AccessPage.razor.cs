using System.Buffers.Text;
using BrewFloor.Domain;
using BrewFloor.Domain.Log;
using BrewFloor.Store.People;
using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Components;

namespace BrewFloor.Web.Account;

/// <summary>How the reader gets in, and where they are signed in.</summary>
public sealed partial class AccessPage(Wording wording, Passkeys passkeys, Sessions sessions, TimeProvider clock)
{
    private Listed<Passkey> _passkeys = [];
    private Listed<Session> _sessions = [];

    [SupplyParameterFromQuery]
    private string? Passkey { get; set; }

    [CascadingParameter]
    public required HttpContext Http { get; set; }

    private string Device => Devices.Shown(Devices.Of(Http.Request.Headers.UserAgent.ToString()), wording);

    protected override async Task OnInitializedAsync()
    {
        var (id, stop) = (Policies.IdOf(Http.User), Http.RequestAborted);
        _passkeys = await passkeys.OfAsync(id, stop);
        _sessions = await sessions.OfAsync(id, clock.GetUtcNow() - SignIns.Lasts, stop);
    }

    private static string IdOf(Passkey passkey) => Base64Url.EncodeToString(passkey.CredentialId);

    private string AddedAndUsed(Passkey passkey)
    {
        var added = wording["access-passkey-added", new Number("at", passkey.CreatedAt)];
        return passkey.UsedAt is { } used
            ? $"{added}, {wording["access-passkey-used", new Number("at", used)]}"
            : added;
    }

    private string Line(Session session) => SessionWords.Line(session, wording);
}

/// <summary>What a page says of a session.</summary>
internal static class SessionWords
{
    public static string Line(Session session, Wording words) =>
        words[
            "access-session",
            new("device", Devices.Shown(session.Device, words)),
            new("began", session.BeganAt),
            new("seen", session.SeenAt),
            new("address", session.Address)
        ];
}
