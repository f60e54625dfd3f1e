using BrewFloor.Domain.Log;
using BrewFloor.Web.Shell;

namespace BrewFloor.Web.Log;

/// <summary>The form of <see cref="Allowed"/>.</summary>
public sealed class AllowedForm : EntryForm
{
    public override string Kind => "allowed";

    public override IEnumerable<Field> Fields(FormFloor floor) =>
        [
            new ChoiceField("kind", floor.KindChoices()) { IsRequired = true },
            new TicksField("codes", StopsIn(floor.Words)) { IsRequired = true, Hint = "hint.codes" },
            new TextField("reason") { IsRequired = true },
        ];

    public override IEnumerable<LogEntry> Read(FormReader said, FormFloor floor)
    {
        return
        [
            new Allowed(
                floor.TankId,
                said.Text("kind"),
                [.. said.RequiredText("codes").Split(',', StringSplitOptions.RemoveEmptyEntries)],
                // A correction allows no longer than what it corrects.
                floor.Corrected
                    is Allowed old
                    ? old.Until
                    : (said.MomentOrNone("when") ?? floor.Now) + Allowed.Longest,
                said.RequiredText("reason")
            )
            {
                BatchId = floor.BatchIdOrNone,
            },
        ];
    }

    private static IReadOnlyList<(string Value, string Text)> StopsIn(Wording words) =>
        [
            .. Stops
                .CanBeAllowed.Select(code => (Code: code, Text: words.Head(code)))
                .OrderBy(stop => stop.Text, words.Order),
        ];
}
