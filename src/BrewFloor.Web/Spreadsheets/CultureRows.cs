using System.Globalization;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Yeast;
using BrewFloor.Web.Log;
using BrewFloor.Web.Shell;
using BrewFloor.Web.Yeast;

namespace BrewFloor.Web.Spreadsheets;

/// <summary>A row is a lot of yeast: a fresh pack is received, anything with generations behind it is taken over.</summary>
internal sealed class CultureRows : SheetRows
{
    public override IReadOnlyDictionary<string, string> Example { get; } =
        new Dictionary<string, string>(StringComparer.Ordinal)
        {
            ["label"] = "Jar 12",
            ["strain"] = "House ale",
            ["kind"] = "Slurry",
            ["amount"] = "800",
            ["generation"] = "3",
            ["stored"] = "3",
            ["where"] = "Fridge, top shelf",
        };

    public override IEnumerable<Field> Fields(Wording words) =>
        [
            new TextField("label"),
            new TextField("strain") { IsRequired = true },
            new ChoiceField("kind", words.Choices<CultureKind>()) { IsRequired = true },
            new QuantityField("amount", Measure.SmallVolume),
            new QuantityField("grams", Measure.Mass),
            new TextField("generation"),
            new DayField("use-by"),
            new FlagField("mixed"),
            new QuantityField("stored", Measure.Temperature),
            new TextField("where"),
            new TextField("note"),
        ];

    public override RowRead Read(SheetRow row, SheetFloor floor, Wording words)
    {
        var said = row.Said;
        var yeast = new NewCulture(row.Id("culture"), said.RequiredText("strain"), said.Choice<CultureKind>("kind"))
        {
            UseBy = said.DayOrNone("use-by"),
            IsMixed = said.Flag("mixed"),
        };
        var amount = NewCultureFields.Amount(said);
        var isFresh =
            said.Text("generation") is "" or "0" && yeast.Kind is CultureKind.DryPack or CultureKind.LiquidPack;
        var generation = isFresh ? 0 : said.Whole("generation");
        if (generation < 0)
        {
            said.Refuse("generation", new Brewing.Refusal("not-whole", "generation", "", ""));
        }

        if (!said.IsFine)
        {
            return new(yeast.Strain) { Key = said.TextOrNone("label") };
        }

        var read = new RowRead(yeast.Strain)
        {
            Key = said.TextOrNone("label"),
            Figures = Shown(yeast, amount, generation, isFresh, words),
        };
        return floor.TakeJar(Likeness(yeast.Strain, yeast.Kind, yeast.UseBy, generation, amount))
            ? read with
            {
                AlreadyThere = words["import-culture-there", new Number("strain", yeast.Strain)],
            }
            : read with
            {
                Entries = [Found(row, yeast, amount, isFresh ? null : generation, words)],
            };
    }

    /// <summary>What two lots of yeast that are the same lot have alike.</summary>
    public static string Likeness(Culture yeast, CultureState state) =>
        Likeness(yeast.Strain, yeast.Kind, yeast.UseBy, state.Generation, state.AmountMade);

    private static string Likeness(
        string strain,
        CultureKind kind,
        DateOnly? useBy,
        int generation,
        YeastAmount amount
    ) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{strain.ToUpperInvariant()}|{kind}|{useBy:O}|{generation}|{amount.IsMass}|{amount.Value:0.###}"
        );

    private static LogEntry Found(SheetRow row, NewCulture yeast, YeastAmount amount, int? atLeast, Wording words)
    {
        var stored = row.Said.DegreesOrNone("stored");
        LogEntry found = atLeast is { } generation
            ? new CultureTakenOver(yeast, amount, generation) { StoredAt = stored }
            : new CultureReceived(yeast, amount) { StoredAt = stored };
        return found with
        {
            Id = row.Id("came"),
            Note = row.Note(words, "label", "where", "note"),
            Typed = row.Said.Typed,
        };
    }

    private static string[] Shown(NewCulture yeast, YeastAmount amount, int generation, bool isFresh, Wording words) =>
        [
            words.Entry($"choice.CultureKind.{yeast.Kind}"),
            words.Figures.Of(amount),
            isFresh ? words["import-fresh"] : words["import-at-least", new Number("generation", generation)],
        ];
}
