using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Items;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Domain.Yeast;

namespace BrewFloor.DemoSeed.Tests;

/// <summary>The batches, cultures and items that entries bring into being, as the door would make their rows.</summary>
internal static class NewThings
{
    public static NewBatch? BatchOf(LogEntry entry) =>
        entry switch
        {
            FillPlanned planned => planned.NewBatch,
            Filled filled => filled.NewBatch,
            BatchTakenOver taken => taken.NewBatch,
            _ => null,
        };

    public static IEnumerable<NewCulture> CulturesOf(LogEntry entry) =>
        entry switch
        {
            CultureReceived received => [received.NewCulture],
            CultureTakenOver taken => [taken.NewCulture],
            Harvested harvested => harvested.Cuts.Select(cut => cut.NewCulture),
            _ => [],
        };

    public static NewItem? ItemOf(LogEntry entry) =>
        entry switch
        {
            ItemReceived received => received.NewItem,
            ItemCounted counted => counted.NewItem,
            _ => null,
        };

    public static Item Made(NewItem item, int number) =>
        new(item.Id, number, item.Name, item.Kind, item.Measure)
        {
            ReorderAt = item.ReorderAt,
            KeptWhere = item.KeptWhere,
        };

    public static Batch Made(NewBatch batch, int number) =>
        new(batch.Id, number, batch.Name, batch.Style, batch.Kind)
        {
            LimitOfAttenuation = batch.LimitOfAttenuation,
            HarvestPlanned = batch.HarvestPlanned,
            CarbonDioxideWanted = batch.CarbonDioxideWanted,
            DryHopsDuringFermentation = batch.DryHopsDuringFermentation,
        };

    public static Culture Made(NewCulture culture, int number) =>
        new(culture.Id, number, culture.Strain, culture.Kind) { UseBy = culture.UseBy, IsMixed = culture.IsMixed };
}
