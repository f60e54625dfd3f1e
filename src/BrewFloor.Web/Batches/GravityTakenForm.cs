using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Log;
using BrewFloor.Web.Log;

namespace BrewFloor.Web.Batches;

/// <summary>The form of <see cref="GravityTaken"/>.</summary>
public sealed class GravityTakenForm : EntryForm
{
    public override string Kind => "gravity";

    public override IEnumerable<Field> Fields(FormFloor floor) =>
        [
            new QuantityField("gravity", Measure.Gravity) { IsBig = true, IsRequired = true },
            new ChoiceField("instrument", floor.Choices<Instrument>())
            {
                IsRequired = true,
                Start = nameof(Instrument.Hydrometer),
            },
            new QuantityField("sample", Measure.Temperature) { Hint = "hint.sample" },
        ];

    public override IEnumerable<LogEntry> Read(FormReader said, FormFloor floor)
    {
        return
        [
            .. said.GravityOrNone("gravity", said.Choice<Instrument>("instrument"), said.DegreesOrNone("sample"))
                is { } read
                ? [new GravityTaken(floor.TankId, floor.BatchId, read)]
                : Array.Empty<LogEntry>(),
        ];
    }

    public override bool IsOffered(FormFloor floor) => floor.HoldsBeer;

    public override int Likelihood(FormFloor floor) => floor.HoldsBeer ? 70 : 0;
}
