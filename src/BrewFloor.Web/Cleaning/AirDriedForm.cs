using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Log;
using BrewFloor.Web.Log;

namespace BrewFloor.Web.Cleaning;

/// <summary>The form of <see cref="AirDried"/>.</summary>
public sealed class AirDriedForm : EntryForm
{
    public override string Kind => "air-dried";

    public override IEnumerable<Field> Fields(FormFloor floor) => [];

    public override IEnumerable<LogEntry> Read(FormReader said, FormFloor floor) => [new AirDried(floor.TankId)];

    public override bool IsOffered(FormFloor floor) => !floor.HoldsBeer;

    public override int Likelihood(FormFloor floor) => floor.TankState?.Bath is not null ? 96 : 0;
}
