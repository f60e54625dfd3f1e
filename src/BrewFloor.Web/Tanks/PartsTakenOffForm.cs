using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Web.Log;

namespace BrewFloor.Web.Tanks;

/// <summary>The form of <see cref="PartsTakenOff"/>.</summary>
public sealed class PartsTakenOffForm : EntryForm
{
    public override string Kind => "parts-off";

    public override IEnumerable<Field> Fields(FormFloor floor) =>
        [
            new TextField("parts") { IsRequired = true, Suggestions = floor.Offers("offer.parts") },
            .. FittingFields.AreAsked(floor)
                ? [new TicksField("ports", FittingFields.Ports(floor)) { Hint = "hint.ports-off" }]
                : Array.Empty<Field>(),
        ];

    public override IEnumerable<LogEntry> Read(FormReader said, FormFloor floor)
    {
        return
        [
            new PartsTakenOff(floor.TankId, said.RequiredText("parts"))
            {
                Ports = said.Wholes("ports"),
                BatchId = floor.BatchIdOrNone,
            },
        ];
    }

    public override IEnumerable<string> Cautions(FormFloor floor) => ["caution.pressure"];
}
