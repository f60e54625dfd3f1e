using BrewFloor.Store.Log;
using Npgsql;

namespace BrewFloor.Store.Tests.Postgres;

/// <summary>Somebody who has begun and isn't done: what they lock is waited for until they let go.</summary>
internal sealed class Holder : IAsyncDisposable
{
    private readonly NpgsqlConnection _connection;
    private readonly NpgsqlTransaction _transaction;

    private Holder(NpgsqlConnection connection, NpgsqlTransaction transaction) =>
        (_connection, _transaction) = (connection, transaction);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public static Task<Holder> OfTankAsync(NpgsqlDataSource database, Guid tank) =>
        OfAsync(database, $"SELECT 1 FROM tanks WHERE id = $1 {Locks.OfRow}", tank);

    public static Task<Holder> OfHeadAsync(NpgsqlDataSource database) => OfAsync(database, Locks.OfHead);

    public static async Task<Holder> OfAsync(NpgsqlDataSource database, string statement, params object[] values)
    {
        var connection = await database.OpenConnectionAsync(Stop);
        var holder = new Holder(connection, await connection.BeginTransactionAsync(Stop));
        await holder.DoAsync(statement, values);
        return holder;
    }

    public Task DoAsync(string statement, params object[] values) => _connection.DoAsync(statement, Stop, values);

    public Task LetGoAsync() => _transaction.RollbackAsync(Stop);

    public Task CommitAsync() => _transaction.CommitAsync(Stop);

    public async ValueTask DisposeAsync()
    {
        await _transaction.DisposeAsync();
        await _connection.DisposeAsync();
    }
}
