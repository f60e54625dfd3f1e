using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Log;
using UnitsNet;

namespace BrewFloor.Domain.Tanks;

/// <summary>What beer does to a tank when it comes in, goes out and is gone. Shared by every entry that moves beer.</summary>
internal static class Contained
{
    /// <summary>More times than any house rule asks for: which of them matter is decided when read.</summary>
    private const int FillingsKept = 100;

    // Ours: wort that warm scalds and pulls a tank in when it cools shut. Below it, the warmest fermentations are no hot step.
    private static readonly Temperature HotWort = Temperature.FromDegreesCelsius(60);

    /// <summary>Wort or beer ran into the tank; gas and closure stay as they were.</summary>
    /// <param name="warm">What came in, °C; null: nobody read it, and what was read before told of something else.</param>
    public static TankState FilledWith(
        this TankState tank,
        Guid batchId,
        Volume? volume,
        Moment moment,
        Temperature? warm = null
    ) =>
        tank.WithoutStretches() with
        {
            Contents = new(Holding.Beer, moment) { BatchId = batchId, Volume = volume },
            Heel = null,
            Planned = null,
            Soil = Soil.InUse,
            SoilSince = moment,
            Sanitized = null,
            SanitizerIn = null,
            Washed = null,
            RinsedAfterWash = null,
            ChemicalOnWalls = null, // so much wort has rinsed it off
            Bath = null, // wet before it dried: the bath is void
            FilledSinceDried =
                tank.FilledSinceDried.Count < FillingsKept
                    ? [.. tank.FilledSinceDried, moment.At]
                    : tank.FilledSinceDried,
            Temperature = warm is { } read ? new(read, moment) : null,
            Hot = warm >= HotWort ? moment : null,
            IsPressureInDoubt = tank.IsPressureInDoubt || tank.IsShut,
            LastFilled = moment,
        };

    /// <summary>More of the same beer came in, or some went out; nothing is booked while nobody knows the volume.</summary>
    public static TankState With(this TankState tank, Guid batchId, Func<Volume, Volume> change) =>
        tank.BatchId == batchId && tank.Contents.Volume is { } booked
            ? tank with
            {
                Contents = tank.Contents with { Volume = change(booked) },
            }
            : tank;

    public static TankState Without(this TankState tank, Guid batchId, Volume gone) =>
        tank.With(batchId, booked => Books.Rest(booked, gone));

    /// <summary>No beer any more: soiled, and the heel is what runs out when it is opened.</summary>
    public static TankState EmptiedOf(this TankState tank, Volume? heel, Moment moment) =>
        tank with
        {
            Contents = Contents.Nothing,
            Heel = heel,
            Soil = Soil.Soiled,
            SoilSince = moment,
            Gas = tank.Gas is Gas.CarbonDioxide ? Gas.CarbonDioxide : Gas.Unknown, // beer gives it off
            IsPressureInDoubt = tank.IsPressureInDoubt || tank.IsShut,
            LastEmptied = moment,
        };
}
