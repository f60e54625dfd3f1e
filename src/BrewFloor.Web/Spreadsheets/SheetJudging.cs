using BrewFloor.Brewing;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.People;
using BrewFloor.Domain.Tanks;
using BrewFloor.Store.Log;
using BrewFloor.Store.Spreadsheets;
using BrewFloor.Web.Log;
using BrewFloor.Web.Shell;

namespace BrewFloor.Web.Spreadsheets;

/// <summary>Says every row's fate: by the readers of the forms, by the other rows, and by the guards of the floor itself.</summary>
public sealed class SheetJudging(Wording wording, FloorReader reader, SpreadsheetImport import, TimeProvider clock)
{
    internal async Task<DryRun> JudgeAsync(
        Spreadsheet sheet,
        SheetTable table,
        SheetMatching matching,
        Author by,
        CancellationToken stop
    )
    {
        var rows = await ReadAsync(sheet, table, matching, stop);
        var objections = NamedTwice(rows, table, matching, sheet.Kind);
        foreach (var (number, read) in rows)
        {
            var speaks = read?.Tank is { } tank ? TankEdits.New(tank, by.Role) : [];
            objections[number] = [.. objections.GetValueOrDefault(number, []), .. speaks.Select(Said)];
        }

        bool Is(int number) => objections[number] is [];
        var brought = BroughtBy(rows.Where(row => Is(row.Number)));
        if (await import.CheckAsync(brought, by, stop) is Imported.Refused(var judged))
        {
            var byEntry = judged.ToDictionary(j => j.Id, j => j.Verdict.Objections);
            foreach (var (number, read) in rows.Where(row => Is(row.Number)))
            {
                objections[number] = [.. Refused(read, byEntry).Select(Said)];
            }

            brought = BroughtBy(rows.Where(row => Is(row.Number)));
        }

        return new([.. rows.Select(row => FateOf(row.Number, row.Read, objections[row.Number]))], brought);
    }

    private async Task<List<(int Number, RowRead? Read)>> ReadAsync(
        Spreadsheet sheet,
        SheetTable table,
        SheetMatching matching,
        CancellationToken stop
    )
    {
        var inventory = await reader.InventoryAsync(stop);
        var floor = await reader.FloorAsync(stop);
        var yeast = await reader.CulturesAsync(stop);
        var met = new SheetFloor(
            inventory.Floor with
            {
                Batches = floor.Floor.Batches,
            },
            yeast.Floor,
            await import.TakenBackAsync(stop)
        );
        var (kind, fields) = (SheetRows.Of(sheet.Kind), SheetFields.Of(sheet.Kind, wording));
        var times = new SiteTimes(wording.Figures.Zone, clock.GetUtcNow(), wording.Figures.Culture);
        var reading = new RowReading(table, matching, fields, times);
        var rows = new List<(int, RowRead?)>();
        foreach (var row in table.Below)
        {
            rows.Add((row + 1, table.IsEmpty(row) ? null : One(row)));
        }

        return rows;

        RowRead One(int row)
        {
            var said = reading.Read(row);
            var read = kind.Read(new(sheet.Id, row + 1, said), met, wording);
            return read is { AlreadyThere: null, CannotBe: null } && !said.IsFine
                ? read with
                {
                    CannotBe = string.Join('\n', Wrong(said, row, table, matching, fields)),
                }
                : read;
        }
    }

    private IEnumerable<string> Wrong(
        FormReader said,
        int row,
        SheetTable table,
        SheetMatching matching,
        SheetFields fields
    )
    {
        foreach (var (name, refusal) in said.Problems)
        {
            var column = matching.ColumnOf(name);
            var header = column < 0 ? fields.Called(name) : table.At(table.Header, column).Text;
            var value = column < 0 ? matching.Everywhere.GetValueOrDefault(name, "") : table.At(row, column).Text;
            var key =
                value.Length > 0 ? "import-wrong"
                : column < 0 ? "import-no-column"
                : "import-empty-cell";
            yield return wording[
                key,
                new("column", header),
                new("value", value),
                new("what", wording.Say(refusal with { What = Named(refusal, fields) }))
            ];
        }
    }

    // A refusal of the geometry names a field; one of a word or a unit repeats what was written.
    private static string Named(Refusal refusal, SheetFields fields) => fields.Called(refusal.What);

    private Dictionary<int, IReadOnlyList<string>> NamedTwice(
        List<(int Number, RowRead? Read)> rows,
        SheetTable table,
        SheetMatching matching,
        SheetKind kind
    )
    {
        var field = kind switch
        {
            SheetKind.Tanks => "code",
            SheetKind.Batches => "tank",
            _ => "label",
        };
        var column = matching.ColumnOf(field);
        var header = column < 0 ? field : table.At(table.Header, column).Text;
        var found = new Dictionary<int, IReadOnlyList<string>>();
        var twice = rows.Where(row => row.Read?.Key is { Length: > 0 })
            .GroupBy(row => row.Read!.Key!, StringComparer.OrdinalIgnoreCase)
            .Where(same => same.Count() > 1);
        foreach (var same in twice)
        {
            var numbers = string.Join(", ", same.Select(row => row.Number));
            foreach (var (number, _) in same)
            {
                found[number] =
                [
                    wording["import-twice", new("column", header), new("value", same.Key), new("rows", numbers)],
                ];
            }
        }

        return found;
    }

    private static IEnumerable<Objection> Refused(
        RowRead? read,
        Dictionary<Guid, Domain.Listed<Objection>> objections
    ) => (read?.Entries ?? []).SelectMany(entry => objections.GetValueOrDefault(entry.Id));

    private string Said(Objection objection) => wording.Say(objection);

    private static Brought BroughtBy(IEnumerable<(int Number, RowRead? Read)> rows)
    {
        var all = rows.Select(row => row.Read)
            .OfType<RowRead>()
            .Where(read => read is { AlreadyThere: null, CannotBe: null })
            .ToArray();
        return new([.. all.Select(read => read.Tank).OfType<Tank>()], [.. all.SelectMany(read => read.Entries)]);
    }

    private static RowFate FateOf(int number, RowRead? read, IReadOnlyList<string> objections) =>
        read switch
        {
            null => new(number, Fate.Skipped, "", []),
            { CannotBe: { } why } => new(number, Fate.CannotBe, read.Called, [.. objections, .. why.Split('\n')]),
            _ when objections.Count > 0 => new(number, Fate.CannotBe, read.Called, objections),
            { AlreadyThere: { } there } => new(number, Fate.AlreadyThere, read.Called, [there]),
            _ => new(number, Fate.Added, read.Called, read.Figures),
        };
}
