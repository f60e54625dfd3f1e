namespace BrewFloor.Benchmarks.Drills;

/// <summary>Twenty writers at once, for as long as a drill lasts.</summary>
internal sealed class Crew : IAsyncDisposable
{
    public const int Size = 20;

    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    private readonly CancellationTokenSource _enough = new();
    private readonly CancellationTokenSource _stop;
    private readonly Task[] _all;

    private Crew(DrillFloor floor, int seed, HttpClient http, CancellationToken stop)
    {
        _stop = CancellationTokenSource.CreateLinkedTokenSource(stop);
        _all =
        [
            .. Enumerable
                .Range(1, Size)
                .Select(n => new Writer(n, seed + n, http, floor.Codes, Ledger).WriteAsync(_enough.Token, _stop.Token)),
        ];
    }

    public Ledger Ledger { get; } = new();

    public static Crew Begin(DrillFloor floor, int seed, HttpClient http, CancellationToken stop) =>
        new(floor, seed, http, stop);

    /// <summary>Each writes what it began to its end.</summary>
    public async Task FinishAsync()
    {
        await _enough.CancelAsync();
        _stop.CancelAfter(Patience);
        await Task.WhenAll(_all);
    }

    public async ValueTask DisposeAsync()
    {
        await _enough.CancelAsync();
        await _stop.CancelAsync();
        await Task.WhenAll(_all).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        _enough.Dispose();
        _stop.Dispose();
    }
}
