using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Web.Log;

namespace BrewFloor.Web.Tanks;

/// <summary>The form of <see cref="Aired"/>.</summary>
public sealed class AiredForm : EntryForm
{
    public override string Kind => "aired";

    public override IEnumerable<Field> Fields(FormFloor floor) => [];

    public override IEnumerable<LogEntry> Read(FormReader said, FormFloor floor) => [new Aired(floor.TankId)];

    public override IEnumerable<string> Cautions(FormFloor floor) => ["caution.co2"];

    public override bool IsOffered(FormFloor floor) => !floor.HoldsBeer;

    public override int Likelihood(FormFloor floor) =>
        !floor.HoldsBeer && floor.TankState?.Gas is not Gas.Air && floor.Is(Soil.Soiled) ? 85 : 0;
}
