using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Web.Log;

namespace BrewFloor.Web.Tanks;

/// <summary>The form of <see cref="TemperatureSet"/>.</summary>
public sealed class TemperatureSetForm : EntryForm
{
    public override string Kind => "temperature-set";

    public override IEnumerable<Field> Fields(FormFloor floor) =>
        [new QuantityField("temperature", Measure.Temperature) { IsBig = true, IsRequired = true }];

    public override IEnumerable<LogEntry> Read(FormReader said, FormFloor floor) =>
        [new TemperatureSet(floor.TankId, said.Degrees("temperature")) { BatchId = floor.BatchIdOrNone }];

    public override IEnumerable<string> Cautions(FormFloor floor) => floor.HoldsBeer ? ["caution.vacuum"] : [];
}
