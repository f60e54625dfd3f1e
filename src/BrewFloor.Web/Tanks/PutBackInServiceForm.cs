using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Web.Log;

namespace BrewFloor.Web.Tanks;

/// <summary>The form of <see cref="PutBackInService"/>.</summary>
public sealed class PutBackInServiceForm : EntryForm
{
    public override string Kind => "back-in-service";

    public override IEnumerable<Field> Fields(FormFloor floor) => [new TextField("why") { IsRequired = true }];

    public override IEnumerable<LogEntry> Read(FormReader said, FormFloor floor) =>
        [new PutBackInService(floor.TankId, said.RequiredText("why"))];

    public override bool IsOffered(FormFloor floor) => floor.TankState?.OutOfService is not null;

    public override int Likelihood(FormFloor floor) => floor.TankState?.OutOfService is not null ? 95 : 0;
}
