using System.Security.Cryptography;
using System.Text;
using BrewFloor.Domain;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Store.Spreadsheets;
using BrewFloor.Web.Log;
using BrewFloor.Web.Shell;

namespace BrewFloor.Web.Spreadsheets;

/// <summary>What one kind of spreadsheet asks of a row, and what a row of it brings.</summary>
internal abstract class SheetRows
{
    private static readonly Dictionary<SheetKind, SheetRows> ByKind = new()
    {
        [SheetKind.Tanks] = new TankRows(),
        [SheetKind.Batches] = new BatchRows(),
        [SheetKind.Cultures] = new CultureRows(),
    };

    public static SheetRows Of(SheetKind kind) => ByKind[kind];

    /// <summary>What can stand in its columns, in the order of the template.</summary>
    public abstract IEnumerable<Field> Fields(Wording words);

    /// <summary>What a template shows below the header: one invented row, by field.</summary>
    public abstract IReadOnlyDictionary<string, string> Example { get; }

    /// <summary>What the row brings; what can't be read stands in <see cref="SheetRow.Said"/>.</summary>
    public abstract RowRead Read(SheetRow row, SheetFloor floor, Wording words);
}

/// <summary>A row, read by the same reader as a form.</summary>
/// <param name="Sheet">The spreadsheet's id: what the row brings has its ids from it, so that sending it twice brings it once.</param>
/// <param name="Number">As the spreadsheet counts.</param>
internal sealed record SheetRow(Guid Sheet, int Number, FormReader Said)
{
    /// <summary>The same for the same row of the same spreadsheet, whenever it is asked for.</summary>
    /// <param name="of">What it is the id of.</param>
    public Guid Id(string of)
    {
        var hash = SHA256.HashData(Encoding.UTF8.GetBytes($"{Sheet} {Number} {of}"));
        hash[6] = (byte)((hash[6] & 0x0F) | 0x80); // RFC 9562, version 8: made by a rule of our own
        hash[8] = (byte)((hash[8] & 0x3F) | 0x80);
        return new Guid(hash.AsSpan(0, 16), bigEndian: true);
    }

    /// <summary>A note with what has no field of its own: "Jar 12, top shelf", each under the name of its column.</summary>
    public string? Note(Wording words, params ReadOnlySpan<string> names)
    {
        List<string> parts = [];
        foreach (var name in names)
        {
            if (Said.TextOrNone(name) is { } text)
            {
                parts.Add(name is "note" ? text : $"{words.Entry("sheet." + name)}: {text}");
            }
        }

        return parts.Count == 0 ? null : string.Join('\n', parts);
    }
}

/// <summary>What a row brings, or why it brings nothing.</summary>
/// <param name="Called">The row's tank, beer or yeast, for whoever reads the list.</param>
internal sealed record RowRead(string Called)
{
    /// <summary>In figures, as it was understood.</summary>
    public IReadOnlyList<string> Figures { get; init; } = [];

    public Tank? Tank { get; init; }

    public Listed<LogEntry> Entries { get; init; }

    /// <summary>No other row may have it: the code of a tank, the tank of a batch, the label of a jar.</summary>
    public string? Key { get; init; }

    public string? AlreadyThere { get; init; }

    public string? CannotBe { get; init; }
}

/// <summary>The floor that the rows meet.</summary>
internal sealed class SheetFloor(
    Floor floor,
    Floor yeast,
    IReadOnlyDictionary<string, (Guid Id, int Version)> takenBack
)
{
    private readonly Dictionary<string, (Tank Thing, TankState State)> _tanks = floor.Tanks.ToDictionary(
        tank => tank.Thing.Code,
        StringComparer.Ordinal
    );

    private readonly Dictionary<string, int> _jars = yeast
        .Cultures.Where(jar => jar.State.Discarded is null)
        .CountBy(jar => CultureRows.Likeness(jar.Thing, jar.State), StringComparer.Ordinal)
        .ToDictionary(jars => jars.Key, jars => jars.Value, StringComparer.Ordinal);

    public (Tank Thing, TankState State)? Tank(string code) => _tanks.TryGetValue(code, out var tank) ? tank : null;

    /// <summary>A tank that an undone import had added, and that may come again.</summary>
    public (Guid Id, int Version)? TakenBack(string code) => takenBack.TryGetValue(code, out var was) ? was : null;

    public string? BeerIn(TankState tank) =>
        floor.Batches.FirstOrDefault(batch => batch.Thing.Id == tank.BatchId).Thing?.Name;

    /// <summary>One of the jars that are there already answers for one row alike.</summary>
    public bool TakeJar(string likeness)
    {
        if (_jars.GetValueOrDefault(likeness) is 0)
        {
            return false;
        }

        _jars[likeness]--;
        return true;
    }
}
