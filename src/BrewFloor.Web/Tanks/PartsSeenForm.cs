using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Web.Log;

namespace BrewFloor.Web.Tanks;

/// <summary>The form of <see cref="PartsSeen"/>: a row for each port, with what is known to be on it.</summary>
public sealed class PartsSeenForm : EntryForm
{
    public override string Kind => "parts-seen";

    public override IEnumerable<Field> Fields(FormFloor floor) => [FittingFields.OfPorts(floor)];

    public override IEnumerable<LogEntry> Read(FormReader said, FormFloor floor)
    {
        return [new PartsSeen(floor.TankId, FittingFields.Read(said))];
    }

    public override bool IsOffered(FormFloor floor) => FittingFields.AreAsked(floor);

    public override int Likelihood(FormFloor floor) => floor.TankState?.Fitted is [] ? 5 : 0;
}
