namespace BrewFloor.Web.Backups;

/// <summary>Ends the app so that it begins anew in the same process: after a restore nothing it remembered is true.</summary>
public sealed class Restart(IHostApplicationLifetime life, TimeProvider clock) : IDisposable
{
    // The page that says it is done is still asked for.
    private static readonly TimeSpan Soon = TimeSpan.FromSeconds(3);

    private ITimer? _timer;

    public bool IsAsked { get; private set; }

    public void AskSoon()
    {
        IsAsked = true;
        _timer ??= clock.CreateTimer(_ => life.StopApplication(), state: null, Soon, Timeout.InfiniteTimeSpan);
    }

    public void Dispose() => _timer?.Dispose();
}
