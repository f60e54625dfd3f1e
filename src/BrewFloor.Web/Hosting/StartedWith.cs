using BrewFloor.Web.Account;

namespace BrewFloor.Web.Hosting;

/// <summary>One thing the process was started with.</summary>
/// <param name="Value">Null: nothing was said, and the default counts.</param>
/// <param name="Origin">Where it was said: an option of the command line, or "environment".</param>
internal sealed record StartedWith(string Name, string? Value, string? Origin)
{
    private const string Environment = "environment";

    private static readonly string[] Plain =
    [
        "BREWFLOOR_BACKUP_FOLDER",
        "BREWFLOOR_BACKUP_HOUR",
        "BREWFLOOR_BACKUP_KEEP",
        "BREWFLOOR_BACKUP_PASSPHRASE_FILE",
        BasePath.Variable,
        "BREWFLOOR_PGBIN",
        "BREWFLOOR_PGUSER",
        FloorSecret.FileVariable,
        SecurityKept.Variable,
        TokenPace.Variable,
        "ConnectionStrings__BrewFloor_FILE",
        "ConnectionStrings__BrewFloorOwner_FILE",
        TrustedProxies.Variable,
    ];

    // Whoever looks over a shoulder learns that they are set, and no more.
    private static readonly string[] Secrets =
    [
        "BREWFLOOR_BACKUP_PASSPHRASE",
        FloorSecret.Variable,
        "ConnectionStrings__BrewFloor",
        "ConnectionStrings__BrewFloorOwner",
    ];

    /// <summary>It is set, and what it is stays hidden.</summary>
    public bool IsHidden { get; private init; }

    /// <summary>Every option and variable there is, in the order of the table in the documents.</summary>
    public static IReadOnlyList<StartedWith> All(StartOptions options, Func<string, string?> environment) =>
        [
            new("--data", options.DataFolder, OriginOf("--data", "BREWFLOOR_DATA", options, environment)),
            new("--port", $"{options.Port}", OriginOf("--port", "BREWFLOOR_PORT", options, environment)),
            new("--lan", options.IsOnLan ? "on" : null, options.IsOnLan ? "--lan" : null),
            .. Plain.Select(name => Variable(name, environment)),
            .. Secrets.Select(name => Variable(name, environment)).Select(Hide),
        ];

    private static StartedWith Variable(string name, Func<string, string?> environment) =>
        environment(name) is { Length: > 0 } value ? new(name, value, Environment) : new(name, null, null);

    private static StartedWith Hide(StartedWith one) =>
        one with
        {
            Value = one.Value is null ? null : "",
            IsHidden = one.Value is not null,
        };

    private static string? OriginOf(
        string option,
        string variable,
        StartOptions options,
        Func<string, string?> environment
    ) =>
        options.Named.ContainsKey(option) ? option
        : environment(variable) is { Length: > 0 } ? variable
        : null;
}
