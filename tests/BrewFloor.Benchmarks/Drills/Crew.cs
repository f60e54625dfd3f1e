namespace BrewFloor.Benchmarks.Drills;

/// <summary>Twenty writers at once and a reader behind them, for as long as a drill lasts.</summary>
internal sealed class Crew : IAsyncDisposable
{
    public const int Size = 20;

    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    private readonly CancellationTokenSource _enough = new();
    private readonly CancellationTokenSource _allWritten = new();
    private readonly CancellationTokenSource _stop;
    private readonly Task[] _writers;
    private readonly Task[] _reader;
    private readonly Follower _follower;

    private Crew(DrillFloor floor, int seed, HttpClient http, CancellationToken stop)
    {
        _stop = CancellationTokenSource.CreateLinkedTokenSource(stop);
        _follower = new(http, Ledger);
        _reader = [_follower.FollowAsync(_allWritten.Token, _stop.Token)];
        _writers =
        [
            .. Enumerable
                .Range(1, Size)
                .Select(n => new Writer(n, seed + n, http, floor.Codes, Ledger).WriteAsync(_enough.Token, _stop.Token)),
        ];
    }

    public Ledger Ledger { get; } = new();

    /// <summary>What the reader saw.</summary>
    public IReadOnlySet<Guid> Seen => _follower.Seen;

    public static Crew Begin(DrillFloor floor, int seed, HttpClient http, CancellationToken stop) =>
        new(floor, seed, http, stop);

    /// <summary>Each writes what it began to its end, and the reader reads that.</summary>
    public async Task FinishAsync()
    {
        await _enough.CancelAsync();
        _stop.CancelAfter(Patience);
        await Task.WhenAll(_writers);
        await _allWritten.CancelAsync();
        await Task.WhenAll(_reader);
    }

    public async ValueTask DisposeAsync()
    {
        await _enough.CancelAsync();
        await _stop.CancelAsync();
        await Task.WhenAll([.. _writers, .. _reader]).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        _enough.Dispose();
        _allWritten.Dispose();
        _stop.Dispose();
    }
}
