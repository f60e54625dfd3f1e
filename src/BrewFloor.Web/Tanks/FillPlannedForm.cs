using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Web.Log;

namespace BrewFloor.Web.Tanks;

/// <summary>The form of <see cref="FillPlanned"/>.</summary>
public sealed class FillPlannedForm : EntryForm
{
    public override string Kind => "fill-planned";

    public override IEnumerable<Field> Fields(FormFloor floor) =>
        [
            new MomentField("planned-at") { IsRequired = true },
            new QuantityField("volume", Measure.Volume) { IsBig = true, IsRequired = true },
            .. NewBatchFields.For(floor),
        ];

    public override IEnumerable<LogEntry> Read(FormReader said, FormFloor floor)
    {
        var (id, brought) = NewBatchFields.Read(said, floor);
        return
        [
            new FillPlanned(floor.TankId, id, said.MomentOf("planned-at"), said.Litres("volume"))
            {
                NewBatch = brought,
            },
        ];
    }

    public override int Likelihood(FormFloor floor) => 0;
}
