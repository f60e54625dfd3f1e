using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Web.Log;

namespace BrewFloor.Web.Tanks;

/// <summary>The form of <see cref="LeakTested"/>.</summary>
public sealed class LeakTestedForm : EntryForm
{
    public override string Kind => "leak-tested";

    public override IEnumerable<Field> Fields(FormFloor floor) => [PassedField.Of(floor)];

    public override IEnumerable<LogEntry> Read(FormReader said, FormFloor floor) =>
        [new LeakTested(floor.TankId, PassedField.Read(said))];

    public override IEnumerable<string> Cautions(FormFloor floor) => ["caution.pressure"];

    public override int Likelihood(FormFloor floor) => floor.TankState?.Refitted is not null ? 80 : 0;
}
