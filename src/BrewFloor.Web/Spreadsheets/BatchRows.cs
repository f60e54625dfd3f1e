using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Log;
using BrewFloor.Store.Tanks;
using BrewFloor.Web.Log;
using BrewFloor.Web.Shell;

namespace BrewFloor.Web.Spreadsheets;

/// <summary>Whether a row's beer is in a tank, or gone.</summary>
internal enum BatchStatus
{
    Running,
    Finished,
}

/// <summary>A row is beer that is in a tank now. What is drunk isn't on the floor: such a row says so.</summary>
internal sealed class BatchRows : SheetRows
{
    public override IReadOnlyDictionary<string, string> Example { get; } =
        new Dictionary<string, string>(StringComparer.Ordinal)
        {
            ["tank"] = "K9",
            ["number"] = "2026-17",
            ["name"] = "Harvest Pale",
            ["style"] = "Pale ale",
            ["beer"] = "Ale",
            ["original"] = "1.048",
            ["volume"] = "95",
            ["gravity"] = "1.020",
            ["filled-at"] = "2026-03-14 14:00",
            ["pitched-at"] = "2026-03-14 15:00",
            ["generation"] = "2",
            ["status"] = "In a tank",
        };

    public override IEnumerable<Field> Fields(Wording words) =>
        [
            new TextField("tank") { IsRequired = true },
            new TextField("number"),
            new TextField("name") { IsRequired = true },
            new TextField("style"),
            new ChoiceField("beer", words.Choices<BeerKind>()) { IsRequired = true },
            new QuantityField("original", Measure.Gravity),
            new QuantityField("limit", Measure.Gravity),
            new TextField("allergens"),
            new QuantityField("volume", Measure.Volume),
            new QuantityField("gravity", Measure.Gravity),
            new MomentField("filled-at"),
            new MomentField("pitched-at"),
            new TextField("generation"),
            new ChoiceField("status", words.Choices<BatchStatus>()),
            new TextField("note"),
        ];

    public override RowRead Read(SheetRow row, SheetFloor floor, Wording words)
    {
        var said = row.Said;
        var name = said.Text("name");
        if (said.ChoiceOrNone<BatchStatus>("status") is BatchStatus.Finished)
        {
            return new(name) { CannotBe = words["import-batch-finished"] };
        }

        var code = Inventory.Code(said.Text("tank"));
        if (code.Length == 0)
        {
            return new(name) { CannotBe = words["import-batch-nowhere"] };
        }

        if (floor.Tank(code) is not { Thing.IsRetired: false } tank)
        {
            return new(name) { CannotBe = words["import-no-tank", new Number("tank", code)] };
        }

        if (name.Length > 0 && string.Equals(floor.BeerIn(tank.State), name, StringComparison.OrdinalIgnoreCase))
        {
            return new(name)
            {
                Key = code,
                AlreadyThere = words["import-batch-there", new("tank", code), new("name", name)],
            };
        }

        var found = Found(row, tank.Thing.Id, words);
        return new(name)
        {
            Key = code,
            Entries = [found],
            Figures = Shown(found, code, words),
        };
    }

    private static BatchTakenOver Found(SheetRow row, Guid tank, Wording words)
    {
        var said = row.Said;
        var batch = new NewBatch(
            row.Id("batch"),
            said.RequiredText("name"),
            said.Text("style"),
            said.Choice<BeerKind>("beer")
        )
        {
            OriginalGravity = said.SpecificGravityOrNone("original"),
            LimitOfAttenuation = said.SpecificGravityOrNone("limit"),
            Allergens =
            [
                .. said.Text("allergens")
                    .Split([',', ';'], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries),
            ],
        };
        return new(tank, batch)
        {
            Id = row.Id("taken over"),
            Volume = said.LitresOrNone("volume", "volume_l"),
            Gravity = said.GravityOrNone("gravity", Instrument.Hydrometer, null),
            FilledAt = said.MomentOrNone("filled-at"),
            PitchedAt = said.MomentOrNone("pitched-at"),
            Generation = said.WholeOrNone("generation"),
            Note = row.Note(words, "number", "note"),
            Typed = said.Typed,
        };
    }

    private static string[] Shown(BatchTakenOver found, string code, Wording words) =>
        [
            code,
            .. found.Volume is { } volume ? [words.Figures.Of(volume)] : Array.Empty<string>(),
            .. found.NewBatch.OriginalGravity is { } wort
                ? [words["import-original", new Number("gravity", wort)]]
                : Array.Empty<string>(),
            .. found.Gravity?.Gravity20 is { } now
                ? [words["import-gravity", new Number("gravity", now)]]
                : Array.Empty<string>(),
            .. found.FilledAt is { } filled
                ? [words["import-filled", new Number("at", filled)]]
                : Array.Empty<string>(),
            .. found.PitchedAt is { } pitched
                ? [words["import-pitched", new Number("at", pitched)]]
                : Array.Empty<string>(),
        ];
}
