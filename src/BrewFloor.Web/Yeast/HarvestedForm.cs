using BrewFloor.Domain.Log;
using BrewFloor.Domain.Yeast;
using BrewFloor.Web.Log;
using UnitsNet;

namespace BrewFloor.Web.Yeast;

/// <summary>The form of <see cref="Harvested"/>.</summary>
public sealed class HarvestedForm : EntryForm
{
    public override string Kind => "harvested";

    public override IEnumerable<Field> Fields(FormFloor floor) =>
        [
            new ChoiceField("from", floor.Choices<HarvestedFrom>())
            {
                IsRequired = true,
                Start = nameof(HarvestedFrom.Cone),
            },
            new TextField("strain") { Start = floor.StrainPitched(), IsRequired = true },
            new RowsField(
                "cuts",
                [
                    new ChoiceField("cut", floor.Choices<Cut>()) { IsList = true },
                    new QuantityField("volume", Measure.SmallVolume),
                    new TextField("density") { IsNumber = true },
                ],
                3
            ),
            new QuantityField("stored", Measure.Temperature),
        ];

    public override IEnumerable<LogEntry> Read(FormReader said, FormFloor floor)
    {
        var strain = said.RequiredText("strain");
        return
        [
            new Harvested(floor.TankId, floor.BatchId, said.Choice<HarvestedFrom>("from"), [.. Rows(said, strain)])
            {
                StoredAt = said.DegreesOrNone("stored"),
            },
        ];
    }

    public override IEnumerable<string> Cautions(FormFloor floor) => ["caution.pressure", "caution.co2"];

    public override bool IsOffered(FormFloor floor) => floor.HoldsBeer;

    public override int Likelihood(FormFloor floor) => floor.IsFinished ? 65 : 0;

    private static IEnumerable<CutTaken> Rows(FormReader said, string strain)
    {
        for (var row = 0; row < 3; row++)
        {
            var (cut, amount) = ($"cuts.{row}.cut", $"cuts.{row}.volume");
            if (said.IsBegun(cut, amount, $"cuts.{row}.density"))
            {
                yield return new CutTaken(
                    new NewCulture(said.Id("new." + row), strain, CultureKind.Slurry),
                    said.ChoiceOrNone<Cut>(cut) ?? Cut.Whole,
                    said.Litres(amount, $"cuts_{row}_volume_l"),
                    said.FigureOrNone($"cuts.{row}.density") is { } density
                        ? Density.FromGramsPerMilliliter(density)
                        : null
                );
            }
        }
    }
}
