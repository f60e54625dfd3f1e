using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Web.Log;

namespace BrewFloor.Web.Tanks;

/// <summary>The form of <see cref="TemperatureTaken"/>.</summary>
public sealed class TemperatureTakenForm : EntryForm
{
    public override string Kind => "temperature";

    public override IEnumerable<Field> Fields(FormFloor floor) =>
        [new QuantityField("temperature", Measure.Temperature) { IsBig = true, IsRequired = true }];

    public override IEnumerable<LogEntry> Read(FormReader said, FormFloor floor) =>
        [new TemperatureTaken(floor.TankId, said.Degrees("temperature")) { BatchId = floor.BatchIdOrNone }];

    public override int Likelihood(FormFloor floor) => floor.HoldsBeer ? 40 : 0;
}
