namespace BrewFloor.Web.Account;

/// <summary>Waits after wrong tries, longer each time, counted by what tries.</summary>
/// <remarks>
/// A try counts as wrong from its beginning until <see cref="Right"/>: of a hundred at once no more go through than one after the other.
/// </remarks>
/// <param name="waits">After the last free one, after the next, and so on; the last of them stays.</param>
internal sealed class WrongTries(TimeProvider clock, params IReadOnlyList<TimeSpan> waits)
{
    /// <summary>Wrong ones without a wait.</summary>
    public const int Free = 5;

    /// <summary>Ours: after so long without a try it begins anew.</summary>
    public static readonly TimeSpan ForgottenAfter = TimeSpan.FromMinutes(15);

    private const int MostKept = 10_000;

    private readonly Lock _gate = new();
    private readonly Dictionary<string, Tries> _tries = new(StringComparer.Ordinal);

    /// <returns>Null: try. Else the moment from which on it may be tried again.</returns>
    public DateTimeOffset? Begin(string who)
    {
        var now = clock.GetUtcNow();
        lock (_gate)
        {
            var tries = _tries.GetValueOrDefault(who);
            if (now < tries.Until)
            {
                return tries.Until;
            }

            MakeRoom(now);
            var wrong = IsForgotten(tries, now) ? 1 : tries.Wrong + 1;
            _tries[who] = new(wrong, now + WaitAfter(wrong), now);
            return null;
        }
    }

    /// <summary>It was right: as if it had not been tried.</summary>
    public void Right(string who)
    {
        lock (_gate)
        {
            if (_tries.TryGetValue(who, out var tries))
            {
                _tries[who] = tries with { Wrong = tries.Wrong - 1, Until = tries.Last };
            }
        }
    }

    private TimeSpan WaitAfter(int wrong) =>
        wrong < Free ? TimeSpan.Zero : waits[Math.Min(wrong - Free, waits.Count - 1)];

    private static bool IsForgotten(Tries tries, DateTimeOffset now) => now - tries.Last >= ForgottenAfter;

    private void MakeRoom(DateTimeOffset now)
    {
        if (_tries.Count < MostKept)
        {
            return;
        }

        foreach (var (who, _) in _tries.Where(known => IsForgotten(known.Value, now)).ToList())
        {
            _tries.Remove(who);
        }

        if (_tries.Count >= MostKept)
        {
            _tries.Remove(_tries.MinBy(known => known.Value.Last).Key);
        }
    }

    private readonly record struct Tries(int Wrong, DateTimeOffset Until, DateTimeOffset Last);
}
