using System.Net;
using BrewFloor.Store.People;
using BrewFloor.Web.Api;
using BrewFloor.Web.Hosting;
using Npgsql;

namespace BrewFloor.Web.Account;

/// <summary>Writes down what happens to the doors of the house: for owners in the database, for whoever runs it in the program's log.</summary>
public sealed partial class SecurityLog(IServiceProvider services, Readiness readiness, ILogger<SecurityLog> logger)
{
    /// <summary>In place of a network.</summary>
    public const string Console = "console";

    private delegate void Said(ILogger logger, Guid? by, Guid? about, string? network, string? detail, Exception? e);

    private static readonly Dictionary<SecurityKind, Said> Lines = Enum.GetValues<SecurityKind>()
        .ToDictionary(kind => kind, LineOf);

    /// <summary>By whoever is signed in.</summary>
    public Task NoteAsync(HttpContext http, SecurityKind kind, Guid? about = null, string? detail = null) =>
        NoteAsync(http, new SecurityEvent(kind, WhoIs(http), about) { Detail = detail });

    /// <summary>What it tells of has happened: it is written whether somebody still waits or not, and stops nothing when it can't be.</summary>
    public async Task NoteAsync(HttpContext http, SecurityEvent one)
    {
        one = one with { Network = NetworkOf(http.Connection.RemoteIpAddress) };
        Lines[one.Kind](logger, one.By, one.About, one.Network, one.Detail, null);
        if (!readiness.IsReady)
        {
            return; // the database isn't known yet
        }

        try
        {
            await services.GetRequiredService<SecurityBook>().WriteAsync(one, CancellationToken.None);
        }
        catch (NpgsqlException e)
        {
            LogNotKept(one.Kind, e.Message);
        }
    }

    /// <summary>"203.0.113.x", "2001:db8:1::"; nobody needs the rest to see that it wasn't the house.</summary>
    internal static string NetworkOf(IPAddress? address)
    {
        if (address is null || IPAddress.IsLoopback(address))
        {
            return "this machine";
        }

        var (bytes, isShort) = address.IsIPv4MappedToIPv6
            ? (address.MapToIPv4().GetAddressBytes(), true)
            : (address.GetAddressBytes(), address.AddressFamily is System.Net.Sockets.AddressFamily.InterNetwork);
        if (isShort)
        {
            return $"{bytes[0]}.{bytes[1]}.{bytes[2]}.x";
        }

        Array.Clear(bytes, 6, bytes.Length - 6);
        return new IPAddress(bytes).ToString();
    }

    private static Guid? WhoIs(HttpContext http) =>
        http.User.Identity?.IsAuthenticated is true
        && !http.User.HasClaim(claim => claim.Type is BearerTokens.TokenClaim)
            ? Policies.IdOf(http.User)
            : null;

    private static Said LineOf(SecurityKind kind)
    {
        var say = LoggerMessage.Define<SecurityKind, Guid?, Guid?, string?, string?>(
            kind is SecurityKind.SignInFailed or SecurityKind.LockedOut or SecurityKind.RefusedFromElsewhere
                ? LogLevel.Warning
                : LogLevel.Information,
            new EventId((int)kind, kind.ToString()),
            "Security: {Kind} by {By} about {About} from {Network}: {Detail}"
        );
        return (logger, by, about, network, detail, e) => say(logger, kind, by, about, network, detail, e);
    }

    [LoggerMessage(
        EventId = 1000,
        Level = LogLevel.Error,
        Message = "{Kind} could not be written into the security log: {Reason}"
    )]
    private partial void LogNotKept(SecurityKind kind, string reason);
}

internal static class SecurityNotes
{
    /// <summary>By whoever is signed in.</summary>
    public static Task NoteAsync(this HttpContext http, SecurityKind kind, Guid? about = null, string? detail = null) =>
        http.RequestServices.GetRequiredService<SecurityLog>().NoteAsync(http, kind, about, detail);

    /// <summary>By somebody who is only just known.</summary>
    public static Task NoteByAsync(this HttpContext http, Guid by, SecurityKind kind, string? detail = null) =>
        http.RequestServices.GetRequiredService<SecurityLog>().NoteAsync(http, new(kind, by) { Detail = detail });

    /// <summary>A wrong password. What was typed as a name is not written down: it may be a password.</summary>
    public static async Task NoteWrongAsync(this HttpContext http, SignInTry.Wrong wrong)
    {
        await http.NoteAsync(SecurityKind.SignInFailed, wrong.Account);
        if (wrong.IsLocked)
        {
            await http.NoteAsync(SecurityKind.LockedOut, wrong.Account);
        }
    }
}
