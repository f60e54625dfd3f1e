using BrewFloor.Domain.Batches;
using BrewFloor.Web.Log;

namespace BrewFloor.Web.Tanks;

/// <summary>The fields by which an entry brings a batch into being, or names one that is planned or was filled before.</summary>
public static class NewBatchFields
{
    private const string New = "new";

    /// <summary>A new batch, or one of those that are planned; a tank with a planned fill opens with that one.</summary>
    public static IEnumerable<Field> For(FormFloor floor) => floor.Corrected is null ? Choice(floor) : [];

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
    public static IEnumerable<Field> Asked(FormFloor floor) => floor.Corrected is null ? Described(floor) : [];

    private static IEnumerable<Field> Described(FormFloor floor) =>
        [
            new TextField("name"),
            new TextField("style"),
            new ChoiceField("beer", floor.Choices<BeerKind>()) { Start = nameof(BeerKind.Ale) },
            new QuantityField("original", Measure.Gravity) { Hint = "hint.original" },
            new QuantityField("limit", Measure.Gravity) { Hint = "hint.limit" },
            new QuantityField("gas-wanted", Measure.CarbonDioxide) { Hint = "hint.gas-wanted" },
            new TextField("allergens") { Hint = "hint.allergens" },
            new FlagField("harvest-planned"),
            new FlagField("hops-while-fermenting"),
        ];

    /// <summary>The batch that was chosen, or the new one with its client-made id.</summary>
    public static (Guid Id, NewBatch? Brought) Read(FormReader said, FormFloor floor)
    {
        if (floor.Corrected is not null)
        {
            return (floor.BatchId, null); // what it brought into being stays; it is edited on its own page
        }

        if (said.IdOrNone("batch") is { } known)
        {
            return (known, null);
        }

        var brought = Brought(said, floor);
        return (brought.Id, brought);
    }

    public static NewBatch Brought(FormReader said, FormFloor floor) =>
        floor.Corrected is BatchTakenOver old ? old.NewBatch : Brought(said);

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
            Allergens =
            [
                .. said.Text("allergens")
                    .Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries),
            ],
        };
}
