using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Text;
using System.Text.Json.Nodes;

namespace BrewFloor.Benchmarks.Drills;

/// <summary>
/// Somebody who logs over HTTP: counts what was acknowledged, and sends what was not again under the same id until it is.
/// </summary>
internal sealed class Writer(int number, int seed, HttpClient http, IReadOnlyList<string> tanks, Ledger ledger)
{
    private static readonly TimeSpan BeforeTryingAgain = TimeSpan.FromMilliseconds(200);

    private readonly Random _random = new(seed);
    private int _written;

    /// <param name="enough">Ends it after the request under way.</param>
    /// <param name="stop">Ends it at once.</param>
    public async Task WriteAsync(CancellationToken enough, CancellationToken stop)
    {
        while (!enough.IsCancellationRequested)
        {
            var (ids, body) = Next();
            ledger.Sends(ids);
            while (!await IsAcknowledgedAsync(ids, body, stop))
            {
                await Task.Delay(BeforeTryingAgain, stop);
            }
        }
    }

    // Every sixth request carries three entries, which are stored all or not at all.
    private (Guid[] Ids, string Body) Next()
    {
        JsonObject[] entries = [.. Enumerable.Range(0, _random.Next(6) == 0 ? 3 : 1).Select(_ => Entry())];
        var body = entries is [var one] ? one : new JsonObject { ["entries"] = new JsonArray([.. entries]) };
        return ([.. entries.Select(e => e["id"]!.GetValue<Guid>())], body.ToJsonString());
    }

    // The note is different on every entry: the same one twice in the log is an entry written twice.
    private JsonObject Entry()
    {
        var entry = new JsonObject
        {
            ["id"] = Guid.CreateVersion7(),
            ["tank"] = tanks[_random.Next(tanks.Count)],
            ["note"] = string.Create(CultureInfo.InvariantCulture, $"writer {number}, line {++_written}"),
        };
        var (kind, field, value) = _random.Next(4) switch
        {
            0 => ("temperature", "temperature", Quantity(_random.Next(10, 240) / 10d, "°C")),
            1 => ("pressure", "pressure", Quantity(_random.Next(0, 15) / 10d, "bar")),
            2 => ("ph", "ph", JsonValue.Create(_random.Next(38, 56) / 10d)),
            _ => ("noted", "", (JsonNode?)null),
        };
        entry["kind"] = kind;
        if (value is not null)
        {
            entry[field] = value;
        }

        return entry;
    }

    private static JsonObject Quantity(double value, string unit) =>
        new JsonObject { ["value"] = value, ["unit"] = unit };

    private async Task<bool> IsAcknowledgedAsync(Guid[] ids, string body, CancellationToken stop)
    {
        var sentAt = Stopwatch.GetTimestamp();
        try
        {
            using var content = new StringContent(body, Encoding.UTF8, "application/json");
            using var answer = await http.PostAsync(new Uri("/api/v1/log", UriKind.Relative), content, stop);
            if (answer.StatusCode is HttpStatusCode.OK)
            {
                Acknowledge(ids, await answer.Content.ReadFromJsonAsync<JsonObject>(stop), sentAt);
                return true;
            }

            await RefusedAsync(answer, stop);
            return false;
        }
        catch (Exception e)
            when (e is HttpRequestException or IOException or TaskCanceledException && !stop.IsCancellationRequested)
        {
            ledger.Failed("connection"); // whether it was written nobody knows: so once more, under the same id
            return false;
        }
    }

    private void Acknowledge(Guid[] ids, JsonObject? answer, long sentAt)
    {
        var entries = answer?["entries"] as JsonArray ?? [];
        foreach (var entry in entries)
        {
            ledger.Acknowledges(
                new(
                    entry!["id"]!.GetValue<Guid>(),
                    entry["seq"]!.GetValue<long>(),
                    entry["at"]!.GetValue<DateTimeOffset>()
                ),
                sentAt
            );
        }

        if (!entries.Select(e => e!["id"]!.GetValue<Guid>()).SequenceEqual(ids))
        {
            ledger.WasWrong($"Acknowledged others than were sent: {answer?.ToJsonString()}");
        }
    }

    private async Task RefusedAsync(HttpResponseMessage answer, CancellationToken stop)
    {
        // "Not now, come again" is right whenever something is broken; anything else would make a writer give up.
        if (answer.StatusCode is HttpStatusCode.ServiceUnavailable && answer.Headers.RetryAfter is not null)
        {
            ledger.Failed("503");
            return;
        }

        var words = await answer.Content.ReadAsStringAsync(stop);
        ledger.WasWrong($"{(int)answer.StatusCode} {words[..Math.Min(words.Length, 300)]}");
        await Task.Delay(200, stop);
    }
}
