namespace BrewFloor.Store.PrivateServer;

/// <summary>Where the private server keeps its data, and what it is run with.</summary>
/// <param name="Folder">The data folder; made when missing.</param>
public sealed record PrivateServerOptions(string Folder)
{
    /// <summary>The folder of PostgreSQL's programs; left out: looked for where systems install them.</summary>
    public string? Programs { get; init; }

    /// <summary>Whom PostgreSQL runs as when the app runs as root.</summary>
    public string User { get; init; } = "postgres";

    /// <summary>Where data is kept when nobody says otherwise: <c>/var/lib/brewfloor</c> as root, else in the home folder.</summary>
    public static string UsualFolder =>
        Environment.IsPrivilegedProcess
            ? "/var/lib/brewfloor"
            : Path.Combine(
                Environment.GetFolderPath(
                    Environment.SpecialFolder.LocalApplicationData,
                    Environment.SpecialFolderOption.DoNotVerify
                ),
                "brewfloor"
            );

    /// <summary>With what the environment says: <c>BREWFLOOR_PGBIN</c> and <c>BREWFLOOR_PGUSER</c>.</summary>
    public static PrivateServerOptions FromEnvironment(string? folder) =>
        new(string.IsNullOrWhiteSpace(folder) ? UsualFolder : folder)
        {
            Programs = Said("BREWFLOOR_PGBIN"),
            User = Said("BREWFLOOR_PGUSER") ?? "postgres",
        };

    private static string? Said(string name) =>
        Environment.GetEnvironmentVariable(name) is { Length: > 0 } value ? value : null;
}
