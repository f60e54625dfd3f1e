using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Web.Log;

namespace BrewFloor.Web.Tanks;

/// <summary>The form of <see cref="PutOutOfService"/>.</summary>
public sealed class PutOutOfServiceForm : EntryForm
{
    public override string Kind => "out-of-service";

    public override IEnumerable<Field> Fields(FormFloor floor) => [new TextField("why") { IsRequired = true }];

    public override IEnumerable<LogEntry> Read(FormReader said, FormFloor floor) =>
        [new PutOutOfService(floor.TankId, said.RequiredText("why"))];

    public override bool IsOffered(FormFloor floor) => floor.TankState?.OutOfService is null;
}
