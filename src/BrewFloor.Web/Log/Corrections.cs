using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Items;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Domain.Yeast;
using BrewFloor.Store.Log;
using UnitsNet;

namespace BrewFloor.Web.Log;

/// <summary>What a correction keeps of the entry it replaces.</summary>
public static class Corrections
{
    /// <summary>The entry as typed anew, with what its form doesn't ask again: the culture or item it brought, and its exact time if that was left.</summary>
    public static LogEntry Standing(LogEntry typed, LogEntry old)
    {
        var at = typed.At == default || SameMinute(typed.At, old.At) ? old.At : typed.At;
        var kept = (typed, old) switch
        {
            (Filled now, Filled then) => now with
            {
                BatchId = then.BatchId,
                Gravity = Unchanged(now.Gravity, then.Gravity),
                Level = now.Level ?? LevelOf(now.Volume, then.Volume, then.Level),
                TankVersion = now.TankVersion ?? then.TankVersion,
            },
            (ToppedUp now, ToppedUp then) => now with
            {
                Gravity = Unchanged(now.Gravity, then.Gravity),
                Level = now.Level ?? LevelOf(now.Volume, then.Volume, then.Level),
                TankVersion = now.TankVersion ?? then.TankVersion,
            },
            (LevelMeasured now, LevelMeasured then) => now with
            {
                Level = now.Level ?? LevelOf(now.Volume, then.Volume, then.Level),
                TankVersion = now.TankVersion ?? then.TankVersion,
            },
            (FillPlanned now, FillPlanned then) => now with { BatchId = then.BatchId },
            (BatchTakenOver now, BatchTakenOver then) => now with { Gravity = Unchanged(now.Gravity, then.Gravity) },
            (CultureReceived now, CultureReceived then) => now with { NewCulture = then.NewCulture },
            (CultureTakenOver now, CultureTakenOver then) => now with { NewCulture = then.NewCulture },
            (ItemReceived now, ItemReceived then) => now with { ItemId = then.ItemId, NewItem = then.NewItem },
            (ItemCounted now, ItemCounted then) => now with { ItemId = then.ItemId, NewItem = then.NewItem },
            _ => typed,
        };
        return kept with { Id = old.Id, At = at };
    }

    // The figure stands as it was: so do the instrument and the sample, where the form asks only for the figure.
    private static GravityRead? Unchanged(GravityRead? now, GravityRead? then) =>
        now is not null && then is not null && now.Value.Equals(then.Value) && now.Sample is null ? then : now;

    // Litres that were a level and weren't changed are that level still.
    private static Length? LevelOf(Volume now, Volume then, Length? level) =>
        now.Liters.Equals(then.Liters) ? level : null;

    private static bool SameMinute(DateTimeOffset one, DateTimeOffset other) =>
        one.UtcTicks / TimeSpan.TicksPerMinute == other.UtcTicks / TimeSpan.TicksPerMinute;
}

/// <summary>A form that corrects is about the batch, culture or item of its entry, wherever that is now.</summary>
public static class FormBatch
{
    public static async Task<FormFloor> OfAsync(
        FormFloor floor,
        LogEntry entry,
        FloorReader reader,
        CancellationToken stop
    )
    {
        var view = await reader.ForAsync(entry.Subjects, stop);
        var (batch, state) = view.Floor.Batches is [var beer, ..] ? beer : default;
        var (culture, cultureState) = view.Floor.Cultures is [var jar, ..] ? jar : default;
        // Work in a tank that took from the stock is about the tank.
        var (item, itemState) = view.Floor.Tanks is [] && view.Floor.Items is [var kept, ..] ? kept : default;
        return floor with
        {
            Item = item,
            ItemState = itemState,
            Corrected = entry,
            Batch = batch ?? floor.Batch,
            BatchState = state ?? floor.BatchState,
            Cultures = [.. floor.Cultures.UnionBy(view.Floor.Cultures, known => known.Thing.Id)],
            Culture = culture ?? floor.Culture,
            CultureState = cultureState ?? floor.CultureState,
        };
    }
}
