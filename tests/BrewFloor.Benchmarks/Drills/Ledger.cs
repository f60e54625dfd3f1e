using System.Collections.Concurrent;
using System.Diagnostics;

namespace BrewFloor.Benchmarks.Drills;

/// <summary>What the app said of an entry when it acknowledged it.</summary>
internal readonly record struct Acknowledged(Guid Id, long Seq, DateTimeOffset At);

/// <summary>What the writers sent, and what of it was acknowledged: the only thing anybody may rely on.</summary>
internal sealed class Ledger
{
    private readonly ConcurrentDictionary<Guid, Acknowledged> _acknowledged = new();
    private readonly ConcurrentQueue<Guid[]> _requests = new();
    private readonly ConcurrentQueue<string> _wrong = new();
    private readonly ConcurrentDictionary<string, int> _failures = new();
    private long _latest;

    public IReadOnlyDictionary<Guid, Acknowledged> Acknowledged => _acknowledged;

    /// <summary>The ids of each request; all of them are stored or none.</summary>
    public IReadOnlyCollection<Guid[]> Requests => _requests;

    /// <summary>Answers that no writer should get, whatever breaks.</summary>
    public IReadOnlyCollection<string> Wrong => _wrong;

    /// <summary>How often a request failed, by the way it did; each was sent again.</summary>
    public IReadOnlyDictionary<string, int> Failures => _failures;

    public int Count => _acknowledged.Count;

    public void Sends(Guid[] ids) => _requests.Enqueue(ids);

    /// <param name="sentAt">When the request left, as a timestamp of the stopwatch.</param>
    public void Acknowledges(Acknowledged entry, long sentAt)
    {
        if (_acknowledged.TryAdd(entry.Id, entry))
        {
            InterlockedMax(sentAt);
        }
        else if (_acknowledged[entry.Id] != entry)
        {
            WasWrong($"Acknowledged twice, differently: {_acknowledged[entry.Id]}, {entry}");
        }
    }

    public void WasWrong(string answer) => _wrong.Enqueue(answer);

    public void Failed(string how) => _failures.AddOrUpdate(how, 1, (_, n) => n + 1);

    /// <summary>Whether a request that left after this moment has been acknowledged.</summary>
    public bool HasSince(long timestamp) => Volatile.Read(ref _latest) > timestamp;

    /// <summary>Waits until it has, and says how long after the moment that was seen.</summary>
    public async Task<TimeSpan> SinceAsync(long timestamp, TimeSpan patience, CancellationToken stop)
    {
        while (!HasSince(timestamp) && Stopwatch.GetElapsedTime(timestamp) < patience)
        {
            await Task.Delay(5, stop);
        }

        return Stopwatch.GetElapsedTime(timestamp);
    }

    /// <summary>Waits until so many have been acknowledged.</summary>
    public async Task ReachesAsync(int count, TimeSpan patience, CancellationToken stop)
    {
        var began = Stopwatch.GetTimestamp();
        while (Count < count && Stopwatch.GetElapsedTime(began) < patience)
        {
            await Task.Delay(1, stop);
        }
    }

    private void InterlockedMax(long value)
    {
        var seen = Volatile.Read(ref _latest);
        while (value > seen)
        {
            var before = Interlocked.CompareExchange(ref _latest, value, seen);
            if (before == seen)
            {
                return;
            }

            seen = before;
        }
    }
}
