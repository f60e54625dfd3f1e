using Npgsql;

namespace BrewFloor.Store.PrivateServer;

/// <summary>The two ways into one database.</summary>
/// <param name="Owner">As the role that migrates: it owns the tables.</param>
/// <param name="Application">As the role the app works with: it reads and writes, and changes no table.</param>
public sealed record Connections(string Owner, string Application)
{
    /// <summary>The same server and roles, another database.</summary>
    public Connections To(string database) => new(To(Owner, database), To(Application, database));

    /// <summary>One login for both: it migrates as itself, and works as the application role.</summary>
    internal static Connections OfOneLogin(string connection)
    {
        var application = new NpgsqlConnectionStringBuilder(connection);
        application.Options = $"{application.Options} -c role={ApplicationRole.Name}".TrimStart();
        return new(connection, application.ConnectionString);
    }

    /// <summary>For one errand: not taken from a pool, and not left in one.</summary>
    internal static NpgsqlConnection Alone(string connection) =>
        new(new NpgsqlConnectionStringBuilder(connection) { Pooling = false, Timeout = 5 }.ConnectionString);

    private static string To(string connection, string database) =>
        new NpgsqlConnectionStringBuilder(connection) { Database = database }.ConnectionString;
}
