using BrewFloor.Domain.Log;

namespace BrewFloor.Web.Log;

/// <summary>The form of <see cref="Allowed"/>.</summary>
public sealed class AllowedForm : EntryForm
{
    public override string Kind => "allowed";

    public override IEnumerable<Field> Fields(FormFloor floor) =>
        [
            new ChoiceField("kind", floor.KindChoices()) { IsRequired = true },
            new TextField("codes") { IsRequired = true, Hint = "hint.codes" },
            new TextField("reason") { IsRequired = true },
        ];

    public override IEnumerable<LogEntry> Read(FormReader said, FormFloor floor)
    {
        return
        [
            new Allowed(
                floor.TankId,
                said.Text("kind"),
                [.. said.RequiredText("codes").Split([' ', ','], StringSplitOptions.RemoveEmptyEntries)],
                floor.Now.AddHours(24),
                said.RequiredText("reason")
            )
            {
                BatchId = floor.BatchIdOrNone,
            },
        ];
    }
}
