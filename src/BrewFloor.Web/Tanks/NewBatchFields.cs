using BrewFloor.Domain;
using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Web.Log;

namespace BrewFloor.Web.Tanks;

/// <summary>The fields by which an entry brings a batch into being, or names one that is planned or was filled before.</summary>
public static class NewBatchFields
{
    private const string New = "new";

    /// <summary>A new batch, or one of those that are planned; a tank with a planned fill opens with that one.</summary>
    public static IEnumerable<Field> For(FormFloor floor) => floor.Corrected is null ? Choice(floor) : OfTheWort(floor);

    private static IEnumerable<Field> Choice(FormFloor floor) =>
        [
            new ChoiceField(
                "batch",
                [
                    (New, floor.Words.Entry("choice.batch-new")),
                    .. floor.Batches.Select(batch =>
                        (
                            batch.Thing.Id.ToString(),
                            floor.Words.Entry(
                                "choice.batch",
                                new("number", batch.Thing.Number),
                                new("name", batch.Thing.Name)
                            )
                        )
                    ),
                ]
            )
            {
                IsRequired = true,
                Start = floor.TankState?.Planned?.BatchId.ToString() ?? New,
            },
            .. Asked(floor),
        ];

    /// <summary>What is asked of a new batch.</summary>
    public static IEnumerable<Field> Asked(FormFloor floor) =>
        floor.Corrected is null ? Described(floor) : OfTheWort(floor);

    // What the log keeps of a batch is corrected here; its name and its plan are edited on its own page.
    private static IEnumerable<Field> OfTheWort(FormFloor floor) =>
        BroughtBy(floor.Corrected) is null ? [] : [Original, Allergens];

    private static QuantityField Original => new("original", Measure.Gravity) { Hint = "hint.original" };

    private static TextField Allergens => new("allergens") { Hint = "hint.allergens" };

    private static IEnumerable<Field> Described(FormFloor floor) =>
        [
            new TextField("name"),
            new TextField("style"),
            new ChoiceField("beer", floor.Choices<BeerKind>()) { Start = nameof(BeerKind.Ale) },
            Original,
            new QuantityField("limit", Measure.Gravity) { Hint = "hint.limit" },
            new QuantityField("gas-wanted", Measure.CarbonDioxide) { Hint = "hint.gas-wanted" },
            Allergens,
            new FlagField("harvest-planned"),
            new FlagField("hops-while-fermenting"),
        ];

    /// <summary>The batch that was chosen, or the new one with its client-made id.</summary>
    public static (Guid Id, NewBatch? Brought) Read(FormReader said, FormFloor floor)
    {
        if (floor.Corrected is not null)
        {
            return (floor.BatchId, Anew(said, floor));
        }

        if (said.IdOrNone("batch") is { } known)
        {
            return (known, null);
        }

        var brought = Brought(said, floor);
        return (brought.Id, brought);
    }

    public static NewBatch Brought(FormReader said, FormFloor floor) => Anew(said, floor) ?? Brought(said);

    private static NewBatch? Anew(FormReader said, FormFloor floor) =>
        BroughtBy(floor.Corrected) is { } old
            ? old with
            {
                OriginalGravity = said.SpecificGravityOrNone("original"),
                Allergens = AllergensIn(said),
            }
            : null;

    private static NewBatch? BroughtBy(LogEntry? entry) =>
        entry switch
        {
            Filled filled => filled.NewBatch,
            FillPlanned planned => planned.NewBatch,
            BatchTakenOver taken => taken.NewBatch,
            _ => null,
        };

    private static Listed<string> AllergensIn(FormReader said) =>
        [.. said.Text("allergens").Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)];

    private static NewBatch Brought(FormReader said) =>
        new(
            said.Id("new.0"),
            said.RequiredText("name"),
            said.Text("style"),
            said.ChoiceOrNone<BeerKind>("beer") ?? BeerKind.Ale
        )
        {
            OriginalGravity = said.SpecificGravityOrNone("original"),
            LimitOfAttenuation = said.SpecificGravityOrNone("limit"),
            CarbonDioxideWanted = said.CarbonDioxideOrNone("gas-wanted"),
            HarvestPlanned = said.Flag("harvest-planned"),
            DryHopsDuringFermentation = said.Flag("hops-while-fermenting"),
            Allergens = AllergensIn(said),
        };
}
