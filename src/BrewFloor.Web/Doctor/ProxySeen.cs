namespace BrewFloor.Web.Doctor;

/// <summary>When a request last came with the headers a proxy adds.</summary>
public sealed class ProxySeen(TimeProvider clock)
{
    /// <summary>What a proxy adds.</summary>
    public static readonly IReadOnlyList<string> Headers = ["X-Forwarded-For", "X-Forwarded-Proto", "Forwarded"];

    private long _ticks;

    public DateTimeOffset? At => Volatile.Read(ref _ticks) is > 0 and var ticks ? new(ticks, TimeSpan.Zero) : null;

    public void Look(HttpRequest request)
    {
        if (Headers.Any(request.Headers.ContainsKey))
        {
            Volatile.Write(ref _ticks, clock.GetUtcNow().UtcTicks);
        }
    }
}
