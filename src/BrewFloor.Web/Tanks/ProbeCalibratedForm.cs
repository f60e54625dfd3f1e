using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using BrewFloor.Web.Log;

namespace BrewFloor.Web.Tanks;

/// <summary>The form of <see cref="ProbeCalibrated"/>.</summary>
public sealed class ProbeCalibratedForm : EntryForm
{
    public override string Kind => "probe-calibrated";

    public override IEnumerable<Field> Fields(FormFloor floor) =>
        [
            new TextField("what") { IsRequired = true, Suggestions = floor.Offers("offer.probes") },
            PassedField.Of(floor),
            new TextField("off-by") { IsNumber = true },
        ];

    public override IEnumerable<LogEntry> Read(FormReader said, FormFloor floor) =>
        [
            new ProbeCalibrated(floor.TankId, said.RequiredText("what"), PassedField.Read(said))
            {
                OffBy = said.FigureOrNone("off-by"),
            },
        ];
}
