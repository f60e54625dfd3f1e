using System.Collections.Concurrent;
using System.Threading.Channels;
using BrewFloor.Store.PrivateServer;
using BrewFloor.Web.Account;
using Npgsql;

namespace BrewFloor.Web.Live;

/// <summary>One thing that happened, as PostgreSQL announced it.</summary>
/// <param name="Kind">entry, jobs or thing.</param>
/// <param name="What">The number of the entry, or the kind and id of the thing; empty for jobs.</param>
public readonly record struct News(string Kind, string What);

/// <summary>Listens to the database once for the whole process and tells everybody who follows.</summary>
/// <remarks>What is missed while nobody listens isn't lost: entries have numbers, and pages load anew on reconnect.</remarks>
public sealed partial class FloorNews(FloorDatabase database, PeopleChanged people, ILogger<FloorNews> logger)
    : BackgroundService
{
    public const string Channel = "floor";

    private const int Unread = 100; // a follower that far behind loads the page anew anyway

    private readonly ConcurrentDictionary<Guid, Channel<News>> _followers = new();

    public (Guid Id, ChannelReader<News> News) Follow()
    {
        var channel = System.Threading.Channels.Channel.CreateBounded<News>(
            new BoundedChannelOptions(Unread) { FullMode = BoundedChannelFullMode.DropOldest }
        );
        var id = Guid.CreateVersion7();
        _followers[id] = channel;
        return (id, channel.Reader);
    }

    public void Leave(Guid id) => _followers.TryRemove(id, out _);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        while (!stoppingToken.IsCancellationRequested)
        {
            try
            {
                await ListenAsync(stoppingToken);
            }
            catch (Exception e)
                when (e is NpgsqlException or InvalidOperationException or System.Net.Sockets.SocketException)
            {
                LogLost(e.Message);
            }
            catch (OperationCanceledException)
            {
                return;
            }

            await Task.Delay(TimeSpan.FromSeconds(1), stoppingToken)
                .ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }
    }

    private async Task ListenAsync(CancellationToken stop)
    {
        var connections = await database.ConnectionsAsync(stop);
        await using var connection = new NpgsqlConnection(
            new NpgsqlConnectionStringBuilder(connections.Application)
            {
                Pooling = false,
                KeepAlive = 30,
            }.ConnectionString
        );
        await connection.OpenAsync(stop);
        connection.Notification += (_, news) => Tell(news.Payload);
        await using (var listen = new NpgsqlCommand($"LISTEN {Channel}", connection))
        {
            await listen.ExecuteNonQueryAsync(stop);
        }

        Tell("jobs"); // whoever followed meanwhile looks once more
        while (true)
        {
            await connection.WaitAsync(stop);
        }
    }

    private void Tell(string payload)
    {
        var parts = payload.Split(' ', 2);
        var news = new News(parts[0], parts.Length > 1 ? parts[1] : "");
        if (
            news is { Kind: "thing", What: ['p', 'e', 'r', 's', 'o', 'n', ' ', .. var id] }
            && Guid.TryParse(id, out var person)
        )
        {
            people.Note(person); // before anybody is told: they look at once
        }

        foreach (var follower in _followers.Values)
        {
            follower.Writer.TryWrite(news);
        }
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "No news from the database, trying again: {Reason}")]
    private partial void LogLost(string reason);
}
