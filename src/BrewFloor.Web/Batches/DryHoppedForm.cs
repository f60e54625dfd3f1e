using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Log;
using BrewFloor.Web.Log;

namespace BrewFloor.Web.Batches;

/// <summary>The form of <see cref="DryHopped"/>.</summary>
public sealed class DryHoppedForm : EntryForm
{
    public override string Kind => "dry-hopped";

    public override IEnumerable<Field> Fields(FormFloor floor) =>
        [
            new TextField("material") { IsRequired = true },
            new QuantityField("mass", Measure.Mass) { IsBig = true, IsRequired = true },
            new ChoiceField("way", floor.Choices<HopWay>()) { IsRequired = true },
        ];

    public override IEnumerable<LogEntry> Read(FormReader said, FormFloor floor) =>
        [
            new DryHopped(
                floor.TankId,
                floor.BatchId,
                said.RequiredText("material"),
                said.Grams("mass"),
                said.Choice<HopWay>("way")
            ),
        ];

    public override IEnumerable<string> Cautions(FormFloor floor) => ["caution.hops-pressure", "caution.co2"];

    public override bool IsOffered(FormFloor floor) => floor.HoldsBeer;
}
