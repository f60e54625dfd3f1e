using System.Globalization;
using System.Net.ServerSentEvents;
using System.Runtime.CompilerServices;
using System.Security.Claims;
using BrewFloor.Store.Log;
using BrewFloor.Store.People;
using BrewFloor.Web.Account;
using BrewFloor.Web.Api;

namespace BrewFloor.Web.Live;

/// <summary>What happens on the floor, as server-sent events: <c>entry</c> with its number as id, <c>jobs</c>, <c>thing</c>.</summary>
internal static class LiveEndpoint
{
    private static readonly TimeSpan Breath = TimeSpan.FromSeconds(20); // proxies close what is silent for long

    private const int Most = 200; // whoever missed more loads the page anew anyway

    public static void MapLive(this IEndpointRouteBuilder routes) =>
        routes
            .MapGet(
                "/live",
                (
                    HttpContext http,
                    FloorNews news,
                    LogReader reader,
                    Sessions sessions,
                    IHostApplicationLifetime life
                ) =>
                {
                    http.Response.Headers["X-Accel-Buffering"] = "no";
                    var after = long.TryParse(
                        http.Request.Headers["Last-Event-ID"],
                        NumberStyles.None,
                        CultureInfo.InvariantCulture,
                        out var seq
                    )
                        ? seq
                        : (long?)null;
                    return TypedResults.ServerSentEvents(
                        WhileStandingAsync(
                            FollowAsync(news, reader, after, life.ApplicationStopping, http.RequestAborted),
                            http.User,
                            sessions
                        )
                    );
                }
            )
            .RequireAuthorization(ApiPolicies.Read);

    // Who is let go is not told anything more: the page that follows is told to look at itself, and finds the door closed.
    private static async IAsyncEnumerable<SseItem<string>> WhileStandingAsync(
        IAsyncEnumerable<SseItem<string>> news,
        ClaimsPrincipal user,
        Sessions sessions
    )
    {
        var session = SignIns.SessionOf(user);
        var about = session is null ? null : $"person {Policies.IdOf(user)}";
        await foreach (var one in news)
        {
            var mayBeOver = one.EventType is "breath" || string.Equals(one.Data, about, StringComparison.Ordinal);
            if (session is { } id && mayBeOver && !await sessions.StandsAsync(id, CancellationToken.None))
            {
                yield return new SseItem<string>("", "over");
                yield break;
            }

            yield return one;
        }
    }

    private static async IAsyncEnumerable<SseItem<string>> FollowAsync(
        FloorNews news,
        LogReader reader,
        long? after,
        CancellationToken stopping,
        [EnumeratorCancellation] CancellationToken gone
    )
    {
        using var either = CancellationTokenSource.CreateLinkedTokenSource(stopping, gone);
        var (id, followed) = news.Follow();
        try
        {
            // Read before anything is said: what was missed comes with the greeting, and the page is loaded for both at once.
            var missed = after is { } last ? await MissedAsync(reader, last, either.Token) : [];
            yield return new SseItem<string>("", "hello");
            foreach (var seq in missed)
            {
                yield return Entry(seq);
            }

            while (await HasNewsAsync(followed, either.Token) is { } hasNews)
            {
                if (!hasNews)
                {
                    yield return new SseItem<string>("", "breath");
                }

                while (followed.TryRead(out var one))
                {
                    yield return one.Kind is "entry" ? Entry(one.What) : new SseItem<string>(one.What, one.Kind);
                }
            }
        }
        finally
        {
            news.Leave(id);
        }
    }

    private static async Task<IReadOnlyList<string>> MissedAsync(LogReader reader, long after, CancellationToken stop)
    {
        var page = await reader.SinceAsync(after, about: null, Most, stop);
        return [.. page.Items.Select(line => line.Seq.ToString(CultureInfo.InvariantCulture))];
    }

    private static SseItem<string> Entry(string seq) => new(seq, "entry") { EventId = seq };

    // True: something came; false: time to breathe; null: over.
    private static async Task<bool?> HasNewsAsync(
        System.Threading.Channels.ChannelReader<News> followed,
        CancellationToken stop
    )
    {
        using var breath = CancellationTokenSource.CreateLinkedTokenSource(stop);
        breath.CancelAfter(Breath);
        try
        {
            return await followed.WaitToReadAsync(breath.Token) ? true : null;
        }
        catch (OperationCanceledException)
        {
            return stop.IsCancellationRequested ? null : false;
        }
    }
}
