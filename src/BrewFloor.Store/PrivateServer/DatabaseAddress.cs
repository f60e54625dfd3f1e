using Npgsql;

namespace BrewFloor.Store.PrivateServer;

/// <summary>Which database the floor's log is in: one given by whoever runs the app, or a private one in the data folder.</summary>
public abstract record DatabaseAddress
{
    private DatabaseAddress() { }

    /// <summary>Somebody else's server; it is waited for, never started or stopped.</summary>
    public sealed record Given(Connections Connections) : DatabaseAddress;

    /// <summary>A server of the app's own.</summary>
    public sealed record InFolder(PrivateServerOptions Options) : DatabaseAddress;

    /// <summary>A given connection decides; without one the database is private.</summary>
    /// <param name="application"><c>ConnectionStrings__BrewFloor</c>.</param>
    /// <param name="owner"><c>ConnectionStrings__BrewFloorOwner</c>: migrates; left out, the first one does.</param>
    /// <param name="options">For the private server.</param>
    /// <exception cref="PrivateServerProblem">Not connection strings, or an owner alone.</exception>
    public static DatabaseAddress Of(string? application, string? owner, PrivateServerOptions options)
    {
        var given = Read(application, "ConnectionStrings__BrewFloor");
        var owning = Read(owner, "ConnectionStrings__BrewFloorOwner");
        return (given, owning) switch
        {
            (null, null) => new InFolder(options),
            (null, _) => throw ServerProblems.OwnerAlone(),
            (_, null) => new Given(Connections.OfOneLogin(given)),
            _ => new Given(new(owning, given)),
        };
    }

    private static string? Read(string? connection, string name)
    {
        if (string.IsNullOrWhiteSpace(connection))
        {
            return null;
        }

        try
        {
            // Not quoted when it cannot be read: it holds a password.
            var read = new NpgsqlConnectionStringBuilder(connection);
            return read.Host is { Length: > 0 } ? connection : throw ServerProblems.ConnectionString(name);
        }
        catch (ArgumentException)
        {
            throw ServerProblems.ConnectionString(name);
        }
    }
}
