using Npgsql;

namespace BrewFloor.Store.PrivateServer;

/// <summary>A connection for PostgreSQL's own programs: by environment, so that no password stands in the process list.</summary>
internal static class LibpqEnvironment
{
    public static IReadOnlyDictionary<string, string> Of(string connection)
    {
        var read = new NpgsqlConnectionStringBuilder(connection);
        var hosts = read.Host!.Split(',', StringSplitOptions.TrimEntries).Select(host => HostAndPort(host, read.Port));
        var environment = new Dictionary<string, string?>(StringComparer.Ordinal)
        {
            ["PGHOST"] = string.Join(',', hosts.Select(h => h.Host)),
            ["PGPORT"] = string.Join(',', hosts.Select(h => h.Port)),
            ["PGUSER"] = read.Username,
            ["PGPASSWORD"] = read.Password,
            ["PGPASSFILE"] = read.Passfile,
            ["PGDATABASE"] = read.Database ?? read.Username,
            ["PGSSLMODE"] = SslMode(read.SslMode),
            ["PGSSLROOTCERT"] = read.RootCertificate,
            ["PGSSLCERT"] = read.SslCertificate,
            ["PGSSLKEY"] = read.SslKey,
            ["PGTARGETSESSIONATTRS"] = hosts.Skip(1).Any() ? "read-write" : null,
            ["PGAPPNAME"] = "brewfloor backup",
        };
        return environment
            .Where(e => e.Value is { Length: > 0 })
            .ToDictionary(e => e.Key, e => e.Value!, StringComparer.Ordinal);
    }

    // "db1:5433" in Npgsql; a socket's folder has no colon of its own.
    private static (string Host, string Port) HostAndPort(string host, int port) =>
        host.StartsWith('/') || host.LastIndexOf(':') is not (> 0 and var colon)
            ? (host, $"{port}")
            : (host[..colon], host[(colon + 1)..]);

    private static string SslMode(SslMode mode) =>
        mode switch
        {
            Npgsql.SslMode.Disable => "disable",
            Npgsql.SslMode.Allow => "allow",
            Npgsql.SslMode.Require => "require",
            Npgsql.SslMode.VerifyCA => "verify-ca",
            Npgsql.SslMode.VerifyFull => "verify-full",
            _ => "prefer",
        };
}
