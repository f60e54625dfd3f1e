namespace BrewFloor.Web.Account;

/// <summary>How often something may be asked within a minute, counted by what asks.</summary>
internal sealed class Pace(TimeProvider clock)
{
    private static readonly TimeSpan Minute = TimeSpan.FromMinutes(1);

    private readonly Lock _gate = new();
    private readonly Dictionary<string, (long From, int Count)> _asked = new(StringComparer.Ordinal);
    private long _swept = clock.GetTimestamp();

    /// <returns>Null: go on. Else how long to wait.</returns>
    public TimeSpan? Wait(string who, int most)
    {
        lock (_gate)
        {
            Sweep();
            var (from, count) = _asked.GetValueOrDefault(who, (clock.GetTimestamp(), 0));
            if (IsOver(from))
            {
                (from, count) = (clock.GetTimestamp(), 0);
            }

            if (count >= most)
            {
                return Minute - clock.GetElapsedTime(from);
            }

            _asked[who] = (from, count + 1);
            return null;
        }
    }

    private bool IsOver(long from) => clock.GetElapsedTime(from) >= Minute;

    // Whoever came once and never again is not kept.
    private void Sweep()
    {
        if (!IsOver(_swept))
        {
            return;
        }

        _swept = clock.GetTimestamp();
        foreach (var (who, _) in _asked.Where(asked => IsOver(asked.Value.From)).ToList())
        {
            _asked.Remove(who);
        }
    }
}
