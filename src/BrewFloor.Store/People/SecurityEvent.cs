using BrewFloor.Domain;

namespace BrewFloor.Store.People;

/// <summary>What happened to the doors of the house. The numbers are those of the program's log, and stay.</summary>
public enum SecurityKind
{
    SignedIn = 1001,
    SignInFailed = 1002,
    LockedOut = 1003,
    InviteMade = 1101,
    InviteUsed = 1102,
    InviteEnded = 1103,
    OwnerMade = 1104,
    PersonMade = 1105,
    RoleChanged = 1106,
    LetGo = 1107,
    TakenBack = 1108,
    PasswordChanged = 1109,
    PasswordReset = 1110,
    SessionsEnded = 1111,
    TokenMade = 1201,
    TokenEnded = 1202,
    PasskeyAdded = 1301,
    PasskeyRemoved = 1302,
    BackedUp = 1401,
    Exported = 1402,
    Restored = 1403,
    Imported = 1404,
    RefusedFromElsewhere = 1501,
}

/// <summary>One of them, without any password, token or whole address.</summary>
/// <param name="By">Who did it; null: a stranger, or whoever runs the machine.</param>
/// <param name="About">Whom it was done to, when that is somebody else.</param>
public sealed record SecurityEvent(SecurityKind Kind, Guid? By = null, Guid? About = null)
{
    /// <summary>In characters, of detail and network.</summary>
    public const int LongestText = 200;

    public string? Detail
    {
        get;
        init => field = OneLine(value);
    }

    /// <summary>Where it came from, as a network: enough to tell the house from elsewhere.</summary>
    public string? Network
    {
        get;
        init => field = OneLine(value);
    }

    // What somebody typed must not look like another line of a log.
    private static string? OneLine(string? text) =>
        text is null ? null
        : string.Concat(text.Take(LongestText).Select(c => char.IsControl(c) ? ' ' : c)) is { } line
        && !string.IsNullOrWhiteSpace(line)
            ? line
        : null;
}

/// <summary>The same as it was written down.</summary>
/// <param name="By">By name.</param>
/// <param name="About">By name.</param>
public sealed record SecurityNote(long Seq, DateTimeOffset At, SecurityEvent Event, string? By, string? About);

/// <summary>A page of them, the newest first.</summary>
/// <param name="Before">What the page after it begins before; null: there is none.</param>
public sealed record SecurityPageRead(Listed<SecurityNote> Notes, long? Before);
