using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace BrewFloor.Benchmarks.Drills;

/// <summary>
/// A program that reads the log while it grows, remembering the last number it saw: what becomes visible behind that, it would
/// never see.
/// </summary>
internal sealed class Follower(HttpClient http, Ledger ledger)
{
    private static readonly TimeSpan BetweenLooks = TimeSpan.FromMilliseconds(25);

    private readonly HashSet<Guid> _seen = [];
    private long _last;

    /// <summary>What it saw, by id.</summary>
    public IReadOnlySet<Guid> Seen => _seen;

    /// <param name="enough">From then on it ends as soon as there is nothing new.</param>
    /// <param name="stop">Ends it at once.</param>
    public async Task FollowAsync(CancellationToken enough, CancellationToken stop)
    {
        while (true)
        {
            var isLast = enough.IsCancellationRequested;
            var page = await PageAsync(stop);
            foreach (var entry in page ?? [])
            {
                See(entry!.AsObject());
            }

            if (isLast && page is { Count: 0 })
            {
                return;
            }

            await Task.Delay(BetweenLooks, stop);
        }
    }

    private void See(JsonObject entry)
    {
        var (id, seq) = (entry["id"]!.GetValue<Guid>(), entry["seq"]!.GetValue<long>());
        if (seq <= _last || !_seen.Add(id))
        {
            ledger.WasWrong($"The log went back: {seq} after {_last}.");
        }

        _last = seq;
    }

    private async Task<JsonArray?> PageAsync(CancellationToken stop)
    {
        var path = string.Create(CultureInfo.InvariantCulture, $"/api/v1/log?since={_last}&limit=200");
        try
        {
            using var answer = await http.GetAsync(new Uri(path, UriKind.Relative), stop);
            return answer.IsSuccessStatusCode
                ? (await answer.Content.ReadFromJsonAsync<JsonObject>(stop))!["items"]!.AsArray()
                : null;
        }
        catch (Exception e)
            when (e is HttpRequestException or IOException or JsonException or TaskCanceledException
                && !stop.IsCancellationRequested
            )
        {
            return null; // it asks again from the same number
        }
    }
}
