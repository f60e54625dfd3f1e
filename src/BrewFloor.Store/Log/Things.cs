using BrewFloor.Domain;
using BrewFloor.Domain.Batches;
using BrewFloor.Domain.House;
using BrewFloor.Domain.Items;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Domain.Yeast;

namespace BrewFloor.Store.Log;

/// <summary>Tanks, batches, cultures and items as they are today, by id; and the floor they make with their states.</summary>
internal sealed class Things
{
    private readonly Dictionary<Guid, Tank> _tanks = [];
    private readonly Dictionary<Guid, Batch> _batches = [];
    private readonly Dictionary<Guid, Culture> _cultures = [];

    private readonly Dictionary<Guid, Item> _items = [];

    public bool Has(Subject subject) =>
        subject.Kind switch
        {
            SubjectKind.Tank => _tanks.ContainsKey(subject.Id),
            SubjectKind.Batch => _batches.ContainsKey(subject.Id),
            SubjectKind.Culture => _cultures.ContainsKey(subject.Id),
            _ => _items.ContainsKey(subject.Id),
        };

    public void Add(Tank tank) => _tanks[tank.Id] = tank;

    public void Add(Batch batch) => _batches[batch.Id] = batch;

    public void Add(Culture culture) => _cultures[culture.Id] = culture;

    public void Add(Item item) => _items[item.Id] = item;

    /// <summary>What the log knows of a subject before its first entry.</summary>
    public static State Blank(Subject subject) =>
        subject.Kind switch
        {
            SubjectKind.Tank => new TankState(subject.Id),
            SubjectKind.Batch => new BatchState(subject.Id),
            SubjectKind.Culture => new CultureState(subject.Id),
            _ => new ItemState(subject.Id),
        };

    public static State ReadState(SubjectKind kind, string json) =>
        kind switch
        {
            SubjectKind.Tank => FloorJson.Read<TankState>(json),
            SubjectKind.Batch => FloorJson.Read<BatchState>(json),
            SubjectKind.Culture => FloorJson.Read<CultureState>(json),
            _ => FloorJson.Read<ItemState>(json),
        };

    public Floor Floor(HouseRules rules, IReadOnlyDictionary<Subject, State> states, IEnumerable<Subject> subjects)
    {
        var known = subjects
            .Distinct()
            .Where(Has)
            .Select(s => states.TryGetValue(s, out var state) ? state : Blank(s))
            .ToArray();
        return new(rules)
        {
            Tanks = [.. known.OfType<TankState>().Select(s => (_tanks[s.Id], s))],
            Batches = [.. known.OfType<BatchState>().Select(s => (_batches[s.Id], s))],
            Cultures = [.. known.OfType<CultureState>().Select(s => (_cultures[s.Id], s))],
            Items = [.. known.OfType<ItemState>().Select(s => (_items[s.Id], s))],
        };
    }
}

/// <summary>What an entry brings into being: its rows are written with it.</summary>
internal static class Newcomers
{
    public static IEnumerable<Batch> Batches(LogEntry entry)
    {
        var brought = entry switch
        {
            Filled filled => filled.NewBatch,
            FillPlanned planned => planned.NewBatch,
            BatchTakenOver taken => taken.NewBatch,
            _ => null,
        };
        if (brought is not null)
        {
            yield return new(brought.Id, 0, brought.Name, brought.Style, brought.Kind)
            {
                LimitOfAttenuation = brought.LimitOfAttenuation,
                DryHopsDuringFermentation = brought.DryHopsDuringFermentation,
                HarvestPlanned = brought.HarvestPlanned,
                CarbonDioxideWanted = brought.CarbonDioxideWanted,
                ColourEbc = brought.ColourEbc,
            };
        }
    }

    public static IEnumerable<Culture> Cultures(LogEntry entry)
    {
        Listed<NewCulture> brought = entry switch
        {
            CultureReceived received => [received.NewCulture],
            CultureTakenOver taken => [taken.NewCulture],
            Harvested harvested => [.. harvested.Cuts.Select(cut => cut.NewCulture)],
            _ => [],
        };
        return brought.Select(culture => new Culture(culture.Id, 0, culture.Strain, culture.Kind)
        {
            UseBy = culture.UseBy,
            IsMixed = culture.IsMixed,
        });
    }

    public static IEnumerable<Item> Items(LogEntry entry)
    {
        var brought = entry switch
        {
            ItemReceived received => received.NewItem,
            ItemCounted counted => counted.NewItem,
            _ => null,
        };
        if (brought is not null)
        {
            yield return new(brought.Id, 0, brought.Name, brought.Kind, brought.Measure)
            {
                ReorderAt = brought.ReorderAt,
                KeptWhere = brought.KeptWhere,
            };
        }
    }

    public static IEnumerable<Subject> Of(LogEntry entry) =>
        [
            .. Batches(entry).Select(b => Subject.Batch(b.Id)),
            .. Cultures(entry).Select(c => Subject.Culture(c.Id)),
            .. Items(entry).Select(i => Subject.Item(i.Id)),
        ];
}
