namespace BrewFloor.Store.PrivateServer;

/// <summary>What the private server is run with, written anew at each start.</summary>
internal static class ClusterSettings
{
    public const string FileName = "brewfloor.conf";

    /// <summary>For tests only: faster, and a power cut ruins the data.</summary>
    public static readonly IReadOnlyList<string> ThrowAway =
    [
        "fsync = off",
        "synchronous_commit = off",
        "full_page_writes = off",
        "max_connections = 200",
    ];

    /// <summary>The file's text. No network: whoever reaches the socket's folder is let in, nobody else.</summary>
    public static string For(string sockets, IReadOnlyList<string> further) =>
        string.Join(
            '\n',
            [
                "# Written by BrewFloor at each start; changes here are lost.",
                "listen_addresses = ''",
                $"unix_socket_directories = '{sockets.Replace("'", "''", StringComparison.Ordinal)}'",
                "unix_socket_permissions = 0700",
                "port = 5432",
                "max_connections = 40",
                "shared_buffers = 128MB",
                "fsync = on",
                "synchronous_commit = on",
                "full_page_writes = on",
                "timezone = 'UTC'",
                "log_timezone = 'UTC'",
                "log_checkpoints = off", // a line every five minutes would fill a small disk in years
                "log_error_verbosity = terse", // no rows of the club's data in the log
                "log_min_error_statement = panic",
                .. further,
                "",
            ]
        );
}
