using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Log;
using BrewFloor.Web.Log;

namespace BrewFloor.Web.Batches;

/// <summary>The form of <see cref="Packaged"/>.</summary>
public sealed class PackagedForm : EntryForm
{
    public override string Kind => "packaged";

    public override IEnumerable<Field> Fields(FormFloor floor) =>
        [
            new QuantityField("volume", Measure.Volume) { IsBig = true, IsRequired = true },
            new RowsField(
                "containers",
                [
                    new ChoiceField("kind", floor.Choices<ContainerKind>()) { IsList = true },
                    new QuantityField("size", Measure.Volume),
                    new TextField("count") { IsNumber = true },
                ],
                3
            ),
            new FlagField("purged"),
            new FlagField("rest") { Start = "true" },
            new QuantityField("heel", Measure.Volume),
        ];

    public override IEnumerable<LogEntry> Read(FormReader said, FormFloor floor)
    {
        return
        [
            new Packaged(floor.TankId, floor.BatchId, said.Litres("volume"), [.. Rows(said)])
            {
                IsPurged = said.Flag("purged"),
                IsRest = said.Flag("rest"),
                Heel = said.LitresOrNone("heel", "heel_l"),
            },
        ];
    }

    public override IEnumerable<string> Cautions(FormFloor floor) => ["caution.pressure", "caution.co2"];

    public override bool IsOffered(FormFloor floor) => floor.HoldsBeer;

    public override int Likelihood(FormFloor floor) => floor.IsFinished ? 60 : 0;

    private static IEnumerable<Containers> Rows(FormReader said)
    {
        for (var row = 0; row < 3; row++)
        {
            var (kind, size, count) = ($"containers.{row}.kind", $"containers.{row}.size", $"containers.{row}.count");
            if (said.IsBegun(kind, size, count))
            {
                yield return new Containers(
                    said.Choice<ContainerKind>(kind),
                    said.Litres(size, $"containers_{row}_size_l"),
                    said.Whole(count)
                );
            }
        }
    }
}
