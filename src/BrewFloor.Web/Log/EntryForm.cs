using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Items;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Domain.Yeast;
using BrewFloor.Web.Shell;

namespace BrewFloor.Web.Log;

/// <summary>What a form knows of the floor when it is drawn and when it is read.</summary>
/// <param name="Now">When the page was asked for.</param>
/// <param name="Words">The reader's texts and units.</param>
public sealed record FormFloor(DateTimeOffset Now, Wording Words)
{
    public required Domain.House.HouseRules Rules { get; init; }

    public Tank? Tank { get; init; }

    public TankState? TankState { get; init; }

    /// <summary>The batch in the tank, or the one the page is about.</summary>
    public Batch? Batch { get; init; }

    public BatchState? BatchState { get; init; }

    /// <summary>The entry that is corrected: it may be about beer that has left the tank since.</summary>
    public LogEntry? Corrected { get; init; }

    /// <summary>The culture the page is about.</summary>
    public Culture? Culture { get; init; }

    public CultureState? CultureState { get; init; }

    /// <summary>The item the page is about.</summary>
    public Item? Item { get; init; }

    public ItemState? ItemState { get; init; }

    /// <summary>What is kept in stock.</summary>
    public IReadOnlyList<(Item Thing, ItemState State)> Items { get; init; } = [];

    /// <summary>Yeast that can be pitched.</summary>
    public IReadOnlyList<(Culture Thing, CultureState State)> Cultures { get; init; } = [];

    /// <summary>Every other tank in service.</summary>
    public IReadOnlyList<(Tank Thing, TankState State)> OtherTanks { get; init; } = [];

    /// <summary>Rules of the jobs that are due here.</summary>
    public IReadOnlyCollection<string> OpenRules { get; init; } = [];

    /// <summary>The strain of every culture that was pitched into the batch.</summary>
    public IReadOnlyDictionary<Guid, string> Strains { get; init; } = new Dictionary<Guid, string>();

    public bool IsFinished { get; init; }

    /// <summary>Batches that are planned or stand in some tank.</summary>
    public IReadOnlyList<(Batch Thing, BatchState State)> Batches { get; init; } = [];
}

/// <summary>The form of one kind of entry: the fields it asks, and the entries it makes of them.</summary>
/// <remarks>One class a kind, in the folder of its subject. The page around it is the same for all: see <c>EntryPage</c>.</remarks>
public abstract class EntryForm
{
    /// <summary>The stored name of the kind, or a name of its own for a form that writes several.</summary>
    public abstract string Kind { get; }

    /// <summary>Where it is found: on a tank, a batch, a culture or an item.</summary>
    public virtual SubjectKind About => SubjectKind.Tank;

    public abstract IEnumerable<Field> Fields(FormFloor floor);

    /// <summary>The entries of what was posted. With problems noted in <paramref name="said"/> the result is thrown away.</summary>
    /// <remarks>The id of the first entry is <c>said.Id("id")</c>, further ones "id.1", "id.2"; a new batch, culture or item has "new.0".</remarks>
    public abstract IEnumerable<LogEntry> Read(FormReader said, FormFloor floor);

    /// <summary>Keys of the cautions that stand above the form ("caution.caustic"), for work that can hurt someone.</summary>
    public virtual IEnumerable<string> Cautions(FormFloor floor) => [];

    /// <summary>Whether it makes sense to offer it now. The door judges; this only keeps the list short.</summary>
    public virtual bool IsOffered(FormFloor floor) => true;

    /// <summary>How likely it is the next thing here, by urgency and custom; 0: not among the likeliest.</summary>
    public virtual int Likelihood(FormFloor floor) => 0;
}
