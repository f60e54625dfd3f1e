using Npgsql;

namespace BrewFloor.Store.PrivateServer;

/// <summary>The role the app works as: it reads and writes what migrations grant it, and can change no table.</summary>
public static class ApplicationRole
{
    /// <summary>Its name on every server; migrations grant to it.</summary>
    public const string Name = "brewfloor_app";

    /// <summary>On a given server: makes the role when missing, and lets the app's login take it.</summary>
    /// <exception cref="PrivateServerProblem">The owner may not; the sentence has the statements to run.</exception>
    public static async Task EnsureAsync(Connections connections, CancellationToken stop)
    {
        await using var owner = Connections.Alone(connections.Owner);
        await owner.OpenAsync(stop);
        var member = Member(connections) ?? await AskAsync<string>(owner, "SELECT current_user::text", stop);
        if (await IsMemberAsync(owner, member!, stop))
        {
            return;
        }

        try
        {
            await MakeAsync(owner, stop);
            await DoAsync(owner, $"GRANT {Name} TO {Quoted(member!)}", stop);
        }
        catch (PostgresException e) when (e.SqlState is PostgresErrorCodes.InsufficientPrivilege)
        {
            throw ServerProblems.ApplicationRoleMissing(Name, member);
        }
    }

    // With a login of its own, the app is that; with one login for both, the owner takes the role.
    private static string? Member(Connections connections)
    {
        var application = new NpgsqlConnectionStringBuilder(connections.Application).Username;
        return application is { Length: > 0 } ? application : null;
    }

    private static async Task MakeAsync(NpgsqlConnection owner, CancellationToken stop)
    {
        try
        {
            if (await AskAsync<int?>(owner, $"SELECT 1 FROM pg_roles WHERE rolname = '{Name}'", stop) is null)
            {
                await DoAsync(owner, $"CREATE ROLE {Name} NOLOGIN", stop);
            }
        }
        catch (PostgresException e)
            when (e.SqlState is PostgresErrorCodes.DuplicateObject or PostgresErrorCodes.UniqueViolation)
        {
            // Another instance made it in this moment.
        }
    }

    // From PostgreSQL 16 on, being a member does not yet mean that the role may be taken.
    private static async Task<bool> IsMemberAsync(NpgsqlConnection owner, string member, CancellationToken stop)
    {
        var right = owner.PostgreSqlVersion.Major >= 16 ? "SET" : "MEMBER";
        await using var command = new NpgsqlCommand(
            "SELECT pg_has_role($1, oid, $2) FROM pg_roles WHERE rolname = $3",
            owner
        )
        {
            Parameters =
            {
                new() { Value = member },
                new() { Value = right },
                new() { Value = Name },
            },
        };
        return await command.ExecuteScalarAsync(stop) is true;
    }

    private static string Quoted(string name) => $"\"{name.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";

    private static async Task<T?> AskAsync<T>(NpgsqlConnection connection, string question, CancellationToken stop)
    {
        await using var command = new NpgsqlCommand(question, connection);
        return (T?)await command.ExecuteScalarAsync(stop);
    }

    private static async Task DoAsync(NpgsqlConnection connection, string statement, CancellationToken stop)
    {
        await using var command = new NpgsqlCommand(statement, connection);
        await command.ExecuteNonQueryAsync(stop);
    }
}
