using BrewFloor.Domain.Batches;
using BrewFloor.Domain.House;
using BrewFloor.Domain.Items;
using BrewFloor.Domain.Tanks;
using BrewFloor.Domain.Yeast;

namespace BrewFloor.Domain.Log;

/// <summary>What a guard may look at: the entry's subjects as they stood just before it, and the rules of the house.</summary>
/// <remarks>Things and house rules are today's, also for a back-dated entry.</remarks>
public sealed record Floor(HouseRules Rules)
{
    public Listed<(Tank Thing, TankState State)> Tanks { get; init; }

    public Listed<(Batch Thing, BatchState State)> Batches { get; init; }

    public Listed<(Culture Thing, CultureState State)> Cultures { get; init; }

    public Listed<(Item Thing, ItemState State)> Items { get; init; }

    /// <summary>A tank of the entry. One the floor doesn't know is a caller's bug: the door refuses it before.</summary>
    public (Tank Thing, TankState State) Tank(Guid id) => Tanks.First(tank => tank.Thing.Id == id);

    /// <inheritdoc cref="Tank"/>
    public (Batch Thing, BatchState State) Batch(Guid id) => Batches.First(batch => batch.Thing.Id == id);

    /// <inheritdoc cref="Tank"/>
    public (Culture Thing, CultureState State) Culture(Guid id) => Cultures.First(culture => culture.Thing.Id == id);

    /// <inheritdoc cref="Tank"/>
    public (Item Thing, ItemState State) Item(Guid id) => Items.First(item => item.Thing.Id == id);

    public State? StateOf(Subject subject) => States.FirstOrDefault(state => state.Subject == subject);

    public IEnumerable<State> States =>
        [
            .. Tanks.Select(t => t.State),
            .. Batches.Select(b => b.State),
            .. Cultures.Select(c => c.State),
            .. Items.Select(i => i.State),
        ];

    /// <summary>The floor after one more entry, its handovers taken from the states as they stood before it.</summary>
    public Floor After(LogEntry entry)
    {
        var handed = entry.HandedOver(subject => StateOf(subject)).ToLookup(h => h.Taker, h => h.Handed);
        return this with
        {
            Tanks = [.. Tanks.Select(t => (t.Thing, (TankState)t.State.After(entry, [.. handed[t.State.Subject]])))],
            Batches =
            [
                .. Batches.Select(b => (b.Thing, (BatchState)b.State.After(entry, [.. handed[b.State.Subject]]))),
            ],
            Cultures =
            [
                .. Cultures.Select(c => (c.Thing, (CultureState)c.State.After(entry, [.. handed[c.State.Subject]]))),
            ],
            Items = [.. Items.Select(i => (i.Thing, (ItemState)i.State.After(entry, [.. handed[i.State.Subject]])))],
        };
    }
}

public static class Handing
{
    /// <summary>Everything <paramref name="entry"/> hands over, with its taker, from the givers' states just before it.</summary>
    public static IEnumerable<(Subject Taker, HandedOver Handed)> HandedOver(
        this LogEntry entry,
        Func<Subject, State?> before
    ) =>
        from handover in entry.Handovers
        let giver = before(handover.Giver)
        let handed = giver is null ? null : entry.HandedOverBy(giver)
        where handed is not null
        select (handover.Taker, handed);
}
