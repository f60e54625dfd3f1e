using BrewFloor.Brewing;
using BrewFloor.Domain.Log;

namespace BrewFloor.Web.Log;

/// <summary>The ids a form carries: made when it is drawn, used when it is read.</summary>
public static class FormIds
{
    /// <summary>"id" and "id.N" of the entries, "new.N" of what they bring into being.</summary>
    public static readonly IReadOnlyList<string> Names = ["id", "id.1", "id.2", "new.0", "new.1", "new.2"];

    public static string OfEntry(int index) => index == 0 ? "id" : $"id.{index}";
}

/// <summary>From what was posted to entries that can be handed in.</summary>
public static class EntryReading
{
    public const int LongestNote = 4_000;

    /// <summary>The form's entries with the fields every entry has. Problems stand in <paramref name="said"/>.</summary>
    public static IReadOnlyList<LogEntry> Read(EntryForm form, FormReader said, FormFloor floor)
    {
        var note = said.TextOrNone("note");
        if (note?.Length > LongestNote)
        {
            said.Refuse("note", new Refusal("too-long", "note", $"{note.Length}", $"{LongestNote}"));
        }

        var at = said.MomentOrNone("when") ?? default;
        var doneBy = said.Ids("done-by");
        var entries = form.Read(said, floor).ToArray();
        return
        [
            .. entries.Select(
                (entry, index) =>
                    entry with
                    {
                        Id = said.Id(FormIds.OfEntry(index)),
                        At = at,
                        Note = index == 0 ? note : null,
                        DoneBy = doneBy,
                        Typed = index == 0 ? said.Typed : [],
                    }
            ),
        ];
    }

    /// <summary>What was answered to the objections that stood on the page.</summary>
    public static Answer Answer(FormReader said) =>
        new(
            said.Text("answer.reason"),
            [.. said.Text("answer.shown").Split(' ', StringSplitOptions.RemoveEmptyEntries)],
            said.Flag("answer.happened")
        );
}
