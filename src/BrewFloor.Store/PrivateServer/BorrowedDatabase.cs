using System.Diagnostics;
using Npgsql;

namespace BrewFloor.Store.PrivateServer;

/// <summary>A database for one errand: the one the running app uses, or one that is started for it and stopped after.</summary>
public sealed class BorrowedDatabase : IAsyncDisposable
{
    private const int PatienceSeconds = 30;
    private static readonly TimeSpan BetweenLooks = TimeSpan.FromMilliseconds(200);

    private readonly PrivateCluster? _ours;

    private BorrowedDatabase(Connections connections, PrivateServerOptions programs, PrivateCluster? ours) =>
        (Connections, Options, _ours) = (connections, programs, ours);

    public Connections Connections { get; }

    /// <summary>Says where PostgreSQL's programs are.</summary>
    public PrivateServerOptions Options { get; }

    public static async Task<BorrowedDatabase> FromAsync(DatabaseAddress address, CancellationToken stop)
    {
        var database = address switch
        {
            DatabaseAddress.InFolder(var options) => await FromFolderAsync(options, stop),
            DatabaseAddress.Given(var given) => new(
                given,
                PrivateServerOptions.FromEnvironment(folder: null),
                ours: null
            ),
            _ => throw new UnreachableException(),
        };
        await database.DemandAnswerAsync(stop);
        return database;
    }

    public ValueTask DisposeAsync() => _ours?.DisposeAsync() ?? ValueTask.CompletedTask;

    private async Task DemandAnswerAsync(CancellationToken stop)
    {
        var watch = Stopwatch.StartNew();
        while (true)
        {
            try
            {
                await using var connection = PrivateServer.Connections.Alone(Connections.Owner);
                await connection.OpenAsync(stop);
                return;
            }
            catch (PostgresException e)
                when (e.SqlState is PostgresErrorCodes.CannotConnectNow && watch.Elapsed.TotalSeconds < PatienceSeconds)
            {
                await Task.Delay(BetweenLooks, stop); // it is starting or recovering
            }
            catch (NpgsqlException e)
            {
                await DisposeAsync();
                throw ServerProblems.NotReachable(e.Message);
            }
        }
    }

    private static async Task<BorrowedDatabase> FromFolderAsync(PrivateServerOptions options, CancellationToken stop)
    {
        var watch = Stopwatch.StartNew();
        while (true)
        {
            if (PrivateCluster.RunningIn(options) is { } running)
            {
                return new(running, options, ours: null);
            }

            try
            {
                var ours = await PrivateCluster.StartAsync(options, stop);
                return new(ours.Connections, options, ours);
            }
            catch (PrivateServerProblem e)
                when (e.Code is "folder-in-use" && watch.Elapsed.TotalSeconds < PatienceSeconds)
            {
                // An app is starting or healing its server at this moment: then it can be shared.
                await Task.Delay(BetweenLooks, stop);
            }
        }
    }
}
