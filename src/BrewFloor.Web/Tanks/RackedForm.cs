using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Web.Log;

namespace BrewFloor.Web.Tanks;

/// <summary>The form of <see cref="Racked"/>.</summary>
public sealed class RackedForm : EntryForm
{
    public override string Kind => "racked";

    public override IEnumerable<Field> Fields(FormFloor floor) =>
        [
            new ChoiceField("to", floor.TankChoices()) { IsRequired = true },
            new QuantityField("volume", Measure.Volume) { IsBig = true, IsRequired = true },
            new QuantityField("left", Measure.Volume) { Start = "0" },
            new FlagField("part"),
        ];

    public override IEnumerable<LogEntry> Read(FormReader said, FormFloor floor)
    {
        return
        [
            new Racked(
                floor.TankId,
                said.IdOrNone("to") ?? said.Id("to"),
                floor.BatchId,
                said.Litres("volume"),
                said.LitresOrNone("left", "left_l") ?? UnitsNet.Volume.FromLiters(0)
            )
            {
                IsRest = !said.Flag("part"),
            },
        ];
    }

    public override IEnumerable<string> Cautions(FormFloor floor) => ["caution.pressure", "caution.co2"];

    public override bool IsOffered(FormFloor floor) => floor.HoldsBeer;

    public override int Likelihood(FormFloor floor) => floor.HoldsBeer && floor.IsFinished ? 50 : 0;
}
