using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Web.Log;

namespace BrewFloor.Web.Tanks;

/// <summary>The form of <see cref="PressureTested"/>.</summary>
public sealed class PressureTestedForm : EntryForm
{
    public override string Kind => "pressure-tested";

    public override IEnumerable<Field> Fields(FormFloor floor) =>
        [PassedField.Of(floor), new QuantityField("pressure", Measure.Pressure)];

    public override IEnumerable<LogEntry> Read(FormReader said, FormFloor floor) =>
        [new PressureTested(floor.TankId, PassedField.Read(said)) { Pressure = said.GaugeOrNone("pressure") }];

    public override IEnumerable<string> Cautions(FormFloor floor) => ["caution.pressure", "caution.licensed"];

    public override bool IsOffered(FormFloor floor) => floor.Tank?.Rating is not null;
}
