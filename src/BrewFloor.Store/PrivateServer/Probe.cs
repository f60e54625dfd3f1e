using Npgsql;

namespace BrewFloor.Store.PrivateServer;

/// <summary>Asks the database whether it is there, over one connection that stays open: a broken one is noticed at once.</summary>
internal sealed class Probe(string connection) : IAsyncDisposable
{
    private readonly string _alone = new NpgsqlConnectionStringBuilder(connection)
    {
        Pooling = false,
        Timeout = 3,
        CommandTimeout = 3,
        ApplicationName = "brewfloor probe",
    }.ConnectionString;

    private NpgsqlConnection? _open;

    /// <exception cref="NpgsqlException">It does not answer within 3 s.</exception>
    public async Task AskAsync(CancellationToken stop)
    {
        try
        {
            _open ??= new(_alone);
            if (_open.State is System.Data.ConnectionState.Closed)
            {
                await _open.OpenAsync(stop);
            }

            await using var question = new NpgsqlCommand("SELECT 1", _open);
            await question.ExecuteScalarAsync(stop);
        }
        catch
        {
            await DisposeAsync();
            throw;
        }
    }

    public async ValueTask DisposeAsync()
    {
        if (_open is { } open)
        {
            _open = null;
            await open.DisposeAsync();
        }
    }
}
