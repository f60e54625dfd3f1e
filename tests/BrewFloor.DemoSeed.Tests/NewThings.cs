using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Domain.Yeast;

namespace BrewFloor.DemoSeed.Tests;

/// <summary>The batches and cultures that entries bring into being, as the door would make their rows.</summary>
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

    public static Batch Made(NewBatch batch, int number) =>
        new(batch.Id, number, batch.Name, batch.Style, batch.Kind)
        {
            LimitOfAttenuation = batch.LimitOfAttenuation,
            HarvestPlanned = batch.HarvestPlanned,
            DryHopsDuringFermentation = batch.DryHopsDuringFermentation,
        };

    public static Culture Made(NewCulture culture, int number) =>
        new(culture.Id, number, culture.Strain, culture.Kind) { UseBy = culture.UseBy, IsMixed = culture.IsMixed };
}
