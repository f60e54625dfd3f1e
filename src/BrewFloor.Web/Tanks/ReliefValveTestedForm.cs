using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Web.Log;

namespace BrewFloor.Web.Tanks;

/// <summary>The form of <see cref="ReliefValveTested"/>.</summary>
public sealed class ReliefValveTestedForm : EntryForm
{
    public override string Kind => "relief-valve-tested";

    public override IEnumerable<Field> Fields(FormFloor floor) =>
        [PassedField.Of(floor), new QuantityField("opened-at", Measure.Pressure)];

    public override IEnumerable<LogEntry> Read(FormReader said, FormFloor floor) =>
        [new ReliefValveTested(floor.TankId, PassedField.Read(said)) { OpenedAt = said.GaugeOrNone("opened-at") }];

    public override IEnumerable<string> Cautions(FormFloor floor) => ["caution.pressure"];

    public override bool IsOffered(FormFloor floor) => floor.Tank?.Relief is not null;
}
