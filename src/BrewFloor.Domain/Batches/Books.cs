using BrewFloor.Domain.Log;
using UnitsNet;

namespace BrewFloor.Domain.Batches;

/// <summary>The litres of a batch, booked: what comes into a tank, goes out of it, and what is left at the end.</summary>
/// <remarks>
/// Total for any log: beer of an unknown volume stays unknown and is counted in when it is measured or comes out; what goes
/// out above what was booked is a measuring difference. All in L.
/// </remarks>
internal static class Books
{
    /// <summary>Wort or beer from outside came into a tank.</summary>
    public static BatchState FilledIn(this BatchState batch, Guid tankId, Volume? volume, Moment moment) =>
        batch
            .Add(l => l with { FilledIn = Sum(l.FilledIn, volume ?? Litres.None) })
            .Into(tankId, volume, moment)
            .AsWort(tankId);

    private static BatchState AsWort(this BatchState batch, Guid tankId) =>
        batch.In(tankId) is { IsWort: false } beer ? batch.With(beer with { IsWort = true }) : batch;

    /// <summary>Beer of the batch came into a tank from another one.</summary>
    public static BatchState Into(this BatchState batch, Guid tankId, Volume? volume, Moment moment)
    {
        var came = volume ?? Litres.None;
        if (batch.In(tankId) is not { } there)
        {
            InTank fresh = new(tankId, volume, moment) { CameIn = came };
            return batch with { InTanks = [.. batch.InTanks, fresh], Closed = null };
        }

        var after = there with { CameIn = Sum(there.CameIn, came), Cold = null };
        return there.Volume is { } booked
            ? batch.With(after with { Volume = Sum(booked, came) })
            : batch.With(after).Add(l => l with { FilledIn = Less(l.FilledIn, came) });
    }

    /// <summary>Beer left a tank; <paramref name="where"/> books where it went.</summary>
    public static BatchState OutOf(this BatchState batch, Guid tankId, Volume volume, Func<Litres, Litres> where)
    {
        var after = batch.Add(where);
        if (after.In(tankId) is not { Volume: { } booked } there)
        {
            return after.Add(l => l with { FilledIn = Sum(l.FilledIn, volume) });
        }

        var over = Volume.FromLiters(Math.Max(0, volume.Liters - booked.Liters));
        return after
            .With(there with { Volume = Rest(booked, volume), Over = Sum(there.Over, over) })
            .Add(l => l with { MeasuringDifference = Less(l.MeasuringDifference, over) });
    }

    /// <summary>The account of a tank is closed: the heel is left, what else was booked is a measuring difference.</summary>
    public static BatchState Emptied(this BatchState batch, Guid tankId, Volume heel, Moment moment)
    {
        var after = batch.OutOf(tankId, heel, l => l with { Left = Sum(l.Left, heel) });
        var missing = after.In(tankId)?.Volume ?? Litres.None;
        var inTanks = after.InTanks.Without(beer => beer.TankId == tankId);
        return after.Add(l => l with { MeasuringDifference = Sum(l.MeasuringDifference, missing) }) with
        {
            InTanks = inTanks,
            Closed = inTanks is [] ? moment : null,
            DryHops = after.DryHopsOutOf(tankId, moment.At),
        };
    }

    /// <summary>The books follow a measured level.</summary>
    public static BatchState Measured(this BatchState batch, Guid tankId, Volume volume)
    {
        if (batch.In(tankId) is not { } there)
        {
            return batch;
        }

        var after = there with { Volume = volume, Over = Litres.None };
        return there.Volume is { } booked
            ? batch
                .With(after)
                .Add(l => l with { MeasuringDifference = Sum(l.MeasuringDifference, Less(booked, volume)) })
            : batch.With(after with { CameIn = volume }).Add(l => l with { FilledIn = Sum(l.FilledIn, volume) });
    }

    /// <summary>The hops that were in a tank are out of the beer.</summary>
    public static Listed<DryHop> DryHopsOutOf(this BatchState batch, Guid tankId, DateTimeOffset at) =>
        [.. batch.DryHops.Select(h => h.TankId == tankId ? h with { OutAt = h.OutAt ?? at } : h)];

    public static InTank? In(this BatchState batch, Guid tankId) =>
        batch.InTanks.Select(beer => (InTank?)beer).FirstOrDefault(beer => beer!.Value.TankId == tankId);

    public static BatchState With(this BatchState batch, InTank changed) =>
        batch with
        {
            InTanks = [.. batch.InTanks.Select(beer => beer.TankId == changed.TankId ? changed : beer)],
        };

    /// <summary>From this entry on it keeps its gas; null: a way out is open again.</summary>
    public static BatchState ShutIn(this BatchState batch, Guid tankId, LogEntry? by) =>
        batch.In(tankId) is { } beer
            ? batch.With(beer with { ShutIn = by is null ? null : beer.ShutIn ?? Moment.Of(by) })
            : batch;

    public static Volume Sum(Volume one, Volume other) => Volume.FromLiters(one.Liters + other.Liters);

    public static Volume Less(Volume one, Volume other) => Volume.FromLiters(one.Liters - other.Liters);

    /// <summary>What is left in a tank, never below nothing.</summary>
    public static Volume Rest(Volume booked, Volume gone) =>
        Volume.FromLiters(Math.Max(0, booked.Liters - gone.Liters));

    private static BatchState Add(this BatchState batch, Func<Litres, Litres> change) =>
        batch with
        {
            Litres = change(batch.Litres),
        };
}
