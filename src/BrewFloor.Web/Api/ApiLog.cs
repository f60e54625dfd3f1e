using System.Globalization;
using System.Text.Json.Nodes;
using BrewFloor.Domain.Log;
using BrewFloor.Store.Log;
using BrewFloor.Web.Shell;

namespace BrewFloor.Web.Api;

/// <summary>The log, for programs: read in the order it was written, and added to.</summary>
internal static class ApiLog
{
    public static void MapApiLog(this IEndpointRouteBuilder api)
    {
        api.MapGet("/log", ListAsync)
            .Reads("Log", "The log in the order it was written: who remembers the last seq misses nothing.")
            .Takes(
                "subject",
                "Only about this: a tank's code, batch:NUMBER, culture:NUMBER, culture:UUID or item:NUMBER."
            )
            .Takes("since", "The last seq already known.")
            .IsPaged();
        api.MapPost("/log", (HttpContext http, LogWriting writing) => writing.WriteAsync(http, IsCheck(http.Request)))
            .Logs(
                "Log one entry or many: all of them or none.",
                "The same entry may be sent again, whatever became of the reply: its id makes that harmless. What the floor "
                    + "objects to is refused with every objection; cautions, and what already happened, are answered in \"answer\"."
            )
            .Takes("check", "true: may I? Judged in the same way, and nothing is stored.");
    }

    private static bool IsCheck(HttpRequest request) =>
        request.Query["check"].ToString() switch
        {
            "" or "false" => false,
            "true" => true,
            _ => throw new UnreadableException("check", "truth-wanted"),
        };

    private static async Task<IResult> ListAsync(
        HttpRequest request,
        LogReader log,
        SubjectNames names,
        Wording words,
        CancellationToken stop
    )
    {
        var limit = ApiPages.Limit(request);
        var since = Math.Max(ApiPages.Whole(request, "since") ?? 0, ApiPages.Whole(request, "after") ?? 0);
        Subject? about = null;
        if (request.Query["subject"].ToString() is { Length: > 0 } text)
        {
            about = await SubjectAsync(text, names, stop);
            if (about is null)
            {
                return ApiProblems.Of(
                    StatusCodes.Status404NotFound,
                    words,
                    "no-such-subject",
                    new Number("subject", text)
                );
            }
        }

        var page = await log.SinceAsync(since, about, limit, stop);
        return ApiPages.Page(page.Items.Select(line => Shown(line, words)), page.Next);
    }

    private static async Task<Subject?> SubjectAsync(string text, SubjectNames names, CancellationToken stop)
    {
        var parts = text.Split(':', 2);
        if (parts is ["culture", var uuid] && Guid.TryParseExact(uuid, "D", out var id))
        {
            return Subject.Culture(id);
        }

        var number =
            parts.Length > 1 && int.TryParse(parts[1], NumberStyles.None, CultureInfo.InvariantCulture, out var n)
                ? n
                : -1;
        var found = await names.FindAsync([parts[0]], [number], [number], [number], stop);
        return parts switch
        {
            [var code] => found.Tank(code) is { } tank ? Subject.Tank(tank) : null,
            ["batch", _] => found.Numbered(SubjectKind.Batch, number) is { } batch ? Subject.Batch(batch) : null,
            ["culture", _] => found.Numbered(SubjectKind.Culture, number) is { } culture
                ? Subject.Culture(culture)
                : null,
            ["item", _] => found.Numbered(SubjectKind.Item, number) is { } item ? Subject.Item(item) : null,
            _ => null,
        };
    }

    private static JsonObject Shown(LogLine line, Wording words)
    {
        var entry = line.Entry;
        var shown = new JsonObject
        {
            ["id"] = entry.Id.ToString(),
            ["seq"] = line.Seq,
            ["kind"] = EntryKinds.NameOf(entry),
            ["at"] = Api.Shown.Of(entry.At),
            ["recorded"] = Api.Shown.Of(line.Recorded),
            ["logged_by"] = line.LoggedBy.ToString(),
            ["by_token"] = line.ByToken,
            ["done_by"] = new JsonArray([.. entry.DoneBy.Select(id => (JsonNode)id.ToString())]),
            ["note"] = entry.Note,
            ["mark"] = Api.Shown.Of(line.Mark),
            ["mended_by"] = line.MendedBy?.ToString(),
            ["done_anyway"] = new JsonArray([.. entry.DoneAnyway.Select(code => (JsonNode)code)]),
            ["objections"] = ApiObjections.Shown(line.Objections, words),
            ["seen_afterwards"] = ApiObjections.Shown(line.SeenAfterwards, words),
        };
        if (line.Reason is { } reason)
        {
            shown["answer"] = new JsonObject
            {
                ["reason"] = reason,
                ["codes"] = new JsonArray([.. line.Answered.Select(code => (JsonNode)code)]),
                ["already_happened"] = line.AlreadyHappened,
            };
        }

        foreach (var (key, value) in Api.Shown.Of(entry))
        {
            shown[key] = value?.DeepClone();
        }

        return shown;
    }
}
