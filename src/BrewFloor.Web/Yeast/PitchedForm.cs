using BrewFloor.Domain.Log;
using BrewFloor.Domain.Yeast;
using BrewFloor.Web.Log;

namespace BrewFloor.Web.Yeast;

/// <summary>The form of <see cref="Pitched"/>.</summary>
public sealed class PitchedForm : EntryForm
{
    public override string Kind => "pitched";

    public override IEnumerable<Field> Fields(FormFloor floor) =>
        floor.CultureChoices() is { Count: > 0 } shelf
            ?
            [
                new RowsField(
                    "cultures",
                    [
                        new ChoiceField("culture", shelf),
                        new QuantityField("amount", Measure.SmallVolume),
                        new QuantityField("grams", Measure.Mass),
                    ],
                    2
                ),
                new TextField("words"),
            ]
            : [new TextField("words")]; // nothing on the shelf to choose from

    public override IEnumerable<LogEntry> Read(FormReader said, FormFloor floor)
    {
        return [new Pitched(floor.TankId, floor.BatchId, [.. Rows(said)]) { Words = said.TextOrNone("words") }];
    }

    public override bool IsOffered(FormFloor floor) => floor.HoldsBeer;

    public override int Likelihood(FormFloor floor) => floor.HoldsBeer && !floor.IsPitched ? 90 : 0;

    private static IEnumerable<CulturePitched> Rows(FormReader said)
    {
        for (var row = 0; row < 2; row++)
        {
            var start = $"cultures.{row}.";
            if (said.IsBegun(start + "culture", start + "amount", start + "grams"))
            {
                yield return new CulturePitched(said.Id(start + "culture"), NewCultureFields.Amount(said, start));
            }
        }
    }
}
