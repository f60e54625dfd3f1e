using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Items;
using BrewFloor.Domain.Tanks;
using BrewFloor.Domain.Yeast;

namespace BrewFloor.Domain.Log;

/// <summary>One line of the floor log: something that happened, was read, or was told.</summary>
/// <remarks>
/// A kind of entry is one sealed record in one file, with all that is special about it. Nobody outside this assembly adds one,
/// and <c>EntryKindsTests</c> names what a new one still lacks.
/// </remarks>
public abstract record LogEntry
{
    private protected LogEntry() { }

    /// <summary>Made by whoever writes the entry, so that sending it twice is harmless.</summary>
    public Guid Id { get; init; }

    /// <summary>When it happened, to the microsecond. Left out: the database's clock at recording.</summary>
    public DateTimeOffset At { get; init; }

    /// <summary>When the sender's clock says it was sent, if the sender has one of its own.</summary>
    public DateTimeOffset? SentAt { get; init; }

    /// <summary>The people who did it; empty: whoever logs it.</summary>
    public Listed<Guid> DoneBy { get; init; }

    /// <summary>At most 4,000 characters.</summary>
    public string? Note { get; init; }

    /// <summary>What a person typed for a quantity, unit and all, by the name of the stored field ("volume_l": "20 hL").</summary>
    public Listed<TypedText> Typed { get; init; }

    /// <summary>The codes of the stops it was recorded over. Not part of what was sent: the store fills it in from the verdict.</summary>
    public Listed<string> DoneAnyway { get; init; }

    public virtual Nature Nature => Nature.Done;

    /// <summary>What it is about; each is locked while it is judged. The first is where a job "answer for it" stands.</summary>
    public abstract IEnumerable<Subject> Subjects { get; }

    /// <summary>Who hands something over; most kinds hand over nothing.</summary>
    public virtual IEnumerable<Handover> Handovers => [];

    /// <summary>What <paramref name="giver"/>, as it stood just before, hands over; <see langword="null"/>: nothing.</summary>
    public virtual HandedOver? HandedOverBy(State giver) => null;

    /// <summary>All that speaks against it, in the order a person would fix it.</summary>
    public abstract IEnumerable<Objection> Objections(Floor before);

    /// <summary>What it changes on one of its tanks: from the state and the entry alone, no clock, no house rules, no things.</summary>
    public virtual TankState Change(TankState tank, Listed<HandedOver> handed) => tank;

    /// <inheritdoc cref="Change(TankState, Listed{HandedOver})"/>
    public virtual BatchState Change(BatchState batch, Listed<HandedOver> handed) => batch;

    /// <inheritdoc cref="Change(TankState, Listed{HandedOver})"/>
    public virtual CultureState Change(CultureState culture, Listed<HandedOver> handed) => culture;

    /// <inheritdoc cref="Change(TankState, Listed{HandedOver})"/>
    public virtual ItemState Change(ItemState item, Listed<HandedOver> handed) =>
        this is ITakesStock taking ? taking.Taken(item) : item;

    /// <summary>Everything the floor says to it, without the cautions the club switched off.</summary>
    public Verdict JudgedOn(Floor before) =>
        new(
            Nature,
            [.. EveryKind.Objections(this, before).Concat(Objections(before)).Where(o => !before.Rules.Silences(o))],
            [.. Subjects.SelectMany(s => before.StateOf(s)?.Allowances ?? []).Where(Uses).Distinct()]
        );

    /// <summary>An allowance is used up by the first entry of its kind, needed or not.</summary>
    public bool Uses(Allowance allowance) =>
        string.Equals(allowance.EntryKind, EntryKinds.NameOf(this), StringComparison.Ordinal)
        && At <= allowance.Until
        && (allowance.BatchId is not { } batch || Subjects.Contains(Subject.Batch(batch)));
}

/// <summary>What a person typed into a field.</summary>
public readonly record struct TypedText(string Field, string Text);
