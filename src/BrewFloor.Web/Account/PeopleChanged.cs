using System.Collections.Concurrent;

namespace BrewFloor.Web.Account;

/// <summary>
/// When something about a person was last changed, as announced by the database to every instance: whoever is let go need not
/// wait for the next look at their cookie.
/// </summary>
public sealed class PeopleChanged(TimeProvider clock)
{
    private readonly ConcurrentDictionary<Guid, DateTimeOffset> _at = new();

    public void Note(Guid person) => _at[person] = clock.GetUtcNow();

    public bool IsSince(Guid person, DateTimeOffset looked) => _at.TryGetValue(person, out var at) && at >= looked;
}
