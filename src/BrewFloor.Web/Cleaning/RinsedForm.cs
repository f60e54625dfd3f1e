using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Log;
using BrewFloor.Web.Log;

namespace BrewFloor.Web.Cleaning;

/// <summary>The form of <see cref="Rinsed"/>.</summary>
public sealed class RinsedForm : EntryForm
{
    public override string Kind => "rinsed";

    public override IEnumerable<Field> Fields(FormFloor floor) => [new FlagField("hot")];

    public override IEnumerable<LogEntry> Read(FormReader said, FormFloor floor) =>
        [new Rinsed(floor.TankId, said.Flag("hot"))];

    public override IEnumerable<string> Cautions(FormFloor floor) => ["caution.hot"];

    public override bool IsOffered(FormFloor floor) => !floor.HoldsBeer;

    public override int Likelihood(FormFloor floor) =>
        floor.HoldsBeer ? 0
        : floor.TankState?.ChemicalOnWalls is not null ? 92
        : floor.Is(Soil.Soiled) ? 60
        : 5;
}
