using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;

namespace BrewFloor.Domain.Cleaning;

/// <summary>What beer and tank bring each other where they meet: mixed cultures and allergens.</summary>
public sealed record Carried(Subject Giver, bool MixedCulture, Listed<string> Allergens) : HandedOver(Giver)
{
    /// <summary>A beer carries all it ever met; a tank what its soft parts still hold.</summary>
    /// <remarks>A tank that was cleared by washing hands nothing on; that plastic never clears is for the guards to say.</remarks>
    public static Carried? By(State giver) =>
        giver switch
        {
            BatchState { HasMixedCulture: false, Allergens: [] } => null,
            BatchState batch => new(batch.Subject, batch.HasMixedCulture, batch.Allergens),
            TankState { ExposedTo: [] } => null,
            TankState tank => Of(tank.Subject, [.. tank.ExposedTo.Where(e => !e.IsCleared)]),
            _ => null,
        };

    private static Carried Of(Subject tank, Exposure[] exposures) =>
        new(
            tank,
            exposures.Any(e => e.Kind is ExposureKind.MixedCulture),
            [
                .. exposures
                    .Where(e => e.Kind is ExposureKind.Allergen)
                    .Select(e => e.What)
                    .Distinct(StringComparer.Ordinal),
            ]
        );
}

/// <summary>Meeting it, as a change to whoever met it.</summary>
internal static class Meeting
{
    /// <summary>The walls met beer that carries something; meeting it again begins the clearing anew.</summary>
    public static TankState Met(this TankState tank, Listed<HandedOver> handed, Guid? batchId, Moment moment) =>
        handed
            .OfType<Carried>()
            .SelectMany(Exposures)
            .Distinct()
            .Aggregate(tank, (met, it) => met.ExposedAnew(new(moment, it.Kind, it.What) { BatchId = batchId }));

    public static BatchState Met(this BatchState batch, Listed<HandedOver> handed) =>
        handed
            .OfType<Carried>()
            .Aggregate(
                batch,
                (met, carried) =>
                    met with
                    {
                        HasMixedCulture = met.HasMixedCulture || carried.MixedCulture,
                        Allergens = [.. met.Allergens.Union(carried.Allergens, StringComparer.Ordinal)],
                    }
            );

    private static IEnumerable<(ExposureKind Kind, string What)> Exposures(Carried carried)
    {
        foreach (var allergen in carried.Allergens)
        {
            yield return (ExposureKind.Allergen, allergen);
        }

        if (carried.MixedCulture)
        {
            yield return (ExposureKind.MixedCulture, "");
        }
    }
}
