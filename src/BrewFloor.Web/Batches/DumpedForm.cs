using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Log;
using BrewFloor.Web.Log;

namespace BrewFloor.Web.Batches;

/// <summary>The form of <see cref="Dumped"/>.</summary>
public sealed class DumpedForm : EntryForm
{
    public override string Kind => "dumped";

    public override IEnumerable<Field> Fields(FormFloor floor) =>
        [
            new ChoiceField("what", floor.Choices<Sediment>()) { IsRequired = true, Start = floor.LikelySediment() },
            new QuantityField("volume", Measure.SmallVolume)
            {
                IsBig = true,
                IsRequired = true,
                StartUnit = "L",
            },
        ];

    public override IEnumerable<LogEntry> Read(FormReader said, FormFloor floor) =>
        [new Dumped(floor.TankId, floor.BatchId, said.Choice<Sediment>("what"), said.Litres("volume"))];

    public override IEnumerable<string> Cautions(FormFloor floor) => ["caution.pressure"];

    public override bool IsOffered(FormFloor floor) => floor.HoldsBeer;

    public override int Likelihood(FormFloor floor) => floor.HoldsBeer ? 55 : 0;
}
