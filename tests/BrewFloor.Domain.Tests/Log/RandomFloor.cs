using BrewFloor.Brewing.Tanks;
using BrewFloor.Domain.Batches;
using BrewFloor.Domain.House;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using UnitsNet;

namespace BrewFloor.Domain.Tests.Log;

/// <summary>Makes the next entry for a floor as it stands, or none when nothing fits.</summary>
internal delegate LogEntry? Maker(RandomFloor random, Floor floor);

/// <summary>A club's floor at random: the same seed always tries the same entries on the same floor.</summary>
/// <remarks>
/// Ask it for the next entry, judge and store that by whatever door, tell it what was stored, and so on. Most entries fit the
/// floor as it stands; about one in ten is wrong on purpose. The kinds that were stored least are tried most. Times rise from
/// <see cref="Begin"/>, but for the entries that somebody logs late.
/// </remarks>
internal sealed class RandomFloor(int seed)
{
    private const double Wrong = 0.1;
    private const double Late = 0.06;

    public static readonly DateTimeOffset Begin = new(2020, 1, 6, 6, 0, 0, TimeSpan.Zero);

    private static readonly Dictionary<string, Maker> Makers = new[]
    {
        RandomTanks.Makers,
        RandomShutting.Makers,
        RandomCleaning.Makers,
        RandomBeer.Makers,
        RandomYeast.Makers,
        RandomItems.Makers,
        RandomMending.Makers,
    }
        .SelectMany(makers => makers)
        .ToDictionary(StringComparer.Ordinal);

    private readonly Random _random = new(seed);
    private readonly List<LogEntry> _stored = [];
    private readonly Dictionary<string, int> _counts = Makers.Keys.ToDictionary(kind => kind, _ => 0);
    private int _ids;

    /// <summary>Of the entry being made.</summary>
    public DateTimeOffset Now { get; private set; } = Begin;

    /// <summary>The house and its tanks, before anything happened. Batches and cultures come with their entries.</summary>
    public Floor Empty { get; } =
        new(HouseRules.Defaults(TimeZoneInfo.FindSystemTimeZoneById("Europe/Berlin")))
        {
            Tanks = [.. Tanks(seed).Select(tank => (tank, new TankState(tank.Id)))],
        };

    /// <summary>What was stored, strikes and corrections too, in the order of storing.</summary>
    public IReadOnlyList<LogEntry> Stored => _stored;

    /// <summary>How often each kind was stored.</summary>
    public IReadOnlyDictionary<string, int> Counts => _counts;

    /// <summary>The next entry somebody might log.</summary>
    /// <param name="floor">All tanks, the batches in them or planned for them, and the cultures that are left.</param>
    public LogEntry Next(Floor floor)
    {
        Now += TimeSpan.FromSeconds(_random.Next(0, 3600));
        while (true)
        {
            if (Makers[NextKind()](this, floor) is { } entry)
            {
                return entry with { Id = entry.Id == default ? NewId() : entry.Id, At = TimeFor(entry) };
            }
        }
    }

    /// <summary>What whoever logs it says to the objections: they have seen them all, and it has happened.</summary>
    public static Answer AnswerTo(Verdict verdict) =>
        new("It was done so", [.. verdict.Objections.Select(o => o.Code)], AlreadyHappened: true);

    public void WasStored(LogEntry entry)
    {
        _stored.Add(entry);
        _counts[EntryKinds.NameOf(entry)]++;
    }

    public Guid NewId() => Id(seed, ++_ids);

    public bool Chance(double share) => _random.NextDouble() < share;

    public int Whole(int from, int to) => _random.Next(from, to + 1);

    public double Between(double from, double to) => Math.Round(from + (_random.NextDouble() * (to - from)), 2);

    public Volume Litres(double from, double to) => Volume.FromLiters(Between(from, Math.Max(from, to)));

    public T OneOf<T>(params ReadOnlySpan<T> items) => items[_random.Next(items.Length)];

    /// <summary>Any value of an enum but its first.</summary>
    public T Any<T>()
        where T : struct, Enum => OneOf<T>(Enum.GetValues<T>());

    /// <summary>A tank that fits; now and then, on purpose, any.</summary>
    public (Tank Thing, TankState State)? Tank(Floor floor, Func<Tank, TankState, bool> fits)
    {
        var isWrong = Chance(Wrong);
        (Tank Thing, TankState State)[] tanks =
        [
            .. floor.Tanks.Where(t =>
                !IsInTheYard(t.Thing) && (isWrong || (!t.Thing.IsRetired && fits(t.Thing, t.State)))
            ),
        ];
        return tanks.Length is 0 ? null : OneOf<(Tank, TankState)>(tanks);
    }

    /// <summary>A tank that stands in the yard, of which the log says nothing yet.</summary>
    public static Tank? InTheYard(Floor floor)
    {
        Tank[] yard =
        [
            .. floor
                .Tanks.Where(t => IsInTheYard(t.Thing) && t.State == new TankState(t.Thing.Id))
                .Select(t => t.Thing),
        ];
        return yard.Length is 0 ? null : yard[0];
    }

    /// <summary>Any tank in use.</summary>
    public Guid TankId(Floor floor) => Tank(floor, (_, _) => true)!.Value.Thing.Id;

    /// <summary>A tank with beer that fits, and the beer; now and then a beer that is elsewhere.</summary>
    public (Tank Tank, TankState State, BatchState Beer)? Beer(Floor floor, Func<TankState, BatchState, bool> fits)
    {
        (Tank Tank, TankState State, BatchState Beer)[] beers =
        [
            .. from t in floor.Tanks
            from b in floor.Batches
            where b.State.Id == t.State.BatchId && fits(t.State, b.State)
            select (t.Thing, t.State, b.State),
        ];
        if (beers.Length is 0)
        {
            return null;
        }

        var (tank, state, beer) = OneOf<(Tank, TankState, BatchState)>(beers);
        return Chance(Wrong / 2)
            ? (tank, state, OneOf<(Batch, BatchState State)>([.. floor.Batches]).State)
            : (tank, state, beer);
    }

    private static bool IsInTheYard(Tank tank) => tank.Code.StartsWith('Y');

    private string NextKind()
    {
        var least = _counts.Values.Min();
        string[] kinds = [.. _counts.Keys.Where(kind => Chance(0.15) || _counts[kind] <= least + 10)];
        return kinds.Length is 0 ? "noted" : OneOf<string>(kinds);
    }

    // What is logged late is what is easily forgotten: the rest would only be refused.
    private DateTimeOffset TimeFor(LogEntry entry) =>
        entry.Nature is Nature.Reading or Nature.Done && entry is not (Corrected or Struck or Answered) && Chance(Late)
            ? Now - TimeSpan.FromMinutes(Whole(1, 1000))
            : Now;

    private static Guid Id(int seed, int number) =>
        new(
            seed,
            0,
            0x7000,
            0x80,
            0,
            0,
            0,
            (byte)(number >> 24),
            (byte)(number >> 16),
            (byte)(number >> 8),
            (byte)number
        );

    private static IEnumerable<Tank> Tanks(int seed)
    {
        var number = 0;
        Tank Make(string code, TankType type, Material material, double litres) =>
            new(Id(seed, ++number - 1_000_000), code)
            {
                Type = type,
                Material = material,
                HighestCleaning = Temperature.FromDegreesCelsius(material is Material.Stainless ? 85 : 50),
                Strapping = DipTable
                    .Measured([
                        new(Length.Zero, Volume.Zero),
                        new(Length.FromMillimeters(1500), Volume.FromLiters(litres)),
                    ])
                    .Value,
                Working = Volume.FromLiters(Math.Round(litres * 0.8)),
                Heating = Heating.Jacket,
            };

        Tank Rated(Tank tank) =>
            tank with
            {
                Rating = new(Pressure.FromKilopascals(200), RatingSource.Plate),
                Relief = new(Pressure.FromKilopascals(180), new(2019, 11, 4)),
            };

        return
        [
            .. from n in Enumerable.Range(1, 5)
            select Make($"K{n}", TankType.ConicalFermenter, Material.Stainless, 250),
            .. from n in Enumerable.Range(1, 4)
            select Rated(Make($"P{n}", TankType.PressureRatedConical, Material.Stainless, 130)),
            .. from n in Enumerable.Range(1, 3)
            select Rated(Make($"T{n}", TankType.BrightTank, Material.Stainless, 260)),
            .. from n in Enumerable.Range(1, 2) select Make($"S{n}", TankType.PlasticConical, Material.Plastic, 60),
            .. from n in Enumerable.Range(1, 180) select Make($"Y{n}", TankType.Bucket, Material.Plastic, 30),
            Make("E1", TankType.Bucket, Material.Plastic, 30) with
            {
                IsOpenType = true,
            },
            Make("OLD", TankType.ConicalFermenter, Material.Stainless, 200) with
            {
                RetiredOn = new(2019, 12, 1),
            },
        ];
    }
}
