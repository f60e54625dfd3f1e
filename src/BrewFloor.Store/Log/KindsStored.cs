using System.Collections.Concurrent;

namespace BrewFloor.Store.Log;

/// <summary>The kinds that this process knows to be in the table of kinds, so that it needn't write them again.</summary>
internal sealed class KindsStored
{
    private readonly ConcurrentDictionary<string, bool> _stored = new(StringComparer.Ordinal);

    public bool Has(string kind) => _stored.ContainsKey(kind);

    public void Committed(IEnumerable<string> kinds)
    {
        foreach (var kind in kinds)
        {
            _stored.TryAdd(kind, true);
        }
    }
}
