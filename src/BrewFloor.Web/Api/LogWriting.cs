using System.Text.Json;
using System.Text.Json.Nodes;
using BrewFloor.Domain.Log;
using BrewFloor.Store.Log;
using BrewFloor.Web.Account;
using BrewFloor.Web.Shell;

namespace BrewFloor.Web.Api;

/// <summary>Entries that programs hand in, and what became of them.</summary>
internal sealed class LogWriting(FloorLog log, SubjectNames names, Wording words)
{
    private static readonly JsonDocumentOptions Strict = new() { AllowDuplicateProperties = false, MaxDepth = 16 };

    public async Task<IResult> WriteAsync(HttpContext http, bool isCheck)
    {
        var stop = http.RequestAborted;
        if (!http.Request.HasJsonContentType())
        {
            return Results.StatusCode(StatusCodes.Status415UnsupportedMediaType);
        }

        var read = new EntryReader();
        read.Read(await BodyAsync(http.Request, stop));
        await FindAsync(read.Spoken, stop);
        var request = new LogRequest(read.Sent(), Policies.AuthorOf(http.User));
        return isCheck ? await CheckAsync(request, stop) : Answered(await log.AppendAsync(request, stop));
    }

    private static async Task<JsonNode?> BodyAsync(HttpRequest request, CancellationToken stop)
    {
        try
        {
            return await JsonNode.ParseAsync(request.Body, nodeOptions: null, Strict, stop);
        }
        catch (JsonException e)
        {
            throw new UnreadableException("", "body-unreadable", new Number("line", (int)(e.LineNumber ?? 0) + 1));
        }
    }

    private async Task FindAsync(IReadOnlyCollection<Spoken> spoken, CancellationToken stop)
    {
        if (spoken.Count == 0)
        {
            return;
        }

        var found = await names.FindAsync(
            spoken.Select(s => s.Code).OfType<string>(),
            spoken.Where(s => s.Kind is SubjectKind.Batch).Select(s => s.Number),
            spoken.Where(s => s.Kind is SubjectKind.Culture).Select(s => s.Number),
            spoken.Where(s => s.Kind is SubjectKind.Item).Select(s => s.Number),
            stop
        );
        foreach (var name in spoken)
        {
            var id = name.Code is { } code ? found.Tank(code) : found.Numbered(name.Kind, name.Number);
            name.Into[name.Key] =
                id?.ToString()
                ?? throw new UnreadableException(
                    name.Field,
                    $"no-such-{Shown.Of(name.Kind)}",
                    new("code", name.Code),
                    new("number", name.Number)
                )
                {
                    IsMissing = true,
                };
        }
    }

    private async Task<IResult> CheckAsync(LogRequest request, CancellationToken stop)
    {
        var (conflict, judged) = await log.CheckAsync(request, stop);
        if (conflict is { } taken)
        {
            return Conflict(taken);
        }

        var entries = request
            .Entries.DistinctBy(sent => sent.Entry.Id)
            .Select(sent => (sent, judged.FirstOrDefault(j => j.Id == sent.Entry.Id)?.Verdict))
            .ToArray();
        return Results.Json(
            new JsonObject
            {
                ["may"] = entries.All(e => e.Verdict?.Allows(e.sent.Answer) is not false),
                ["entries"] = new JsonArray([
                    .. entries.Select(e => new JsonObject
                    {
                        ["id"] = e.sent.Entry.Id.ToString(),
                        ["may"] = e.Verdict?.Allows(e.sent.Answer) is not false,
                        ["again"] = e.Verdict is null,
                        ["objections"] = ApiObjections.Shown(e.Verdict?.Objections ?? [], words),
                    }),
                ]),
            }
        );
    }

    private IResult Answered(Appended appended) =>
        appended switch
        {
            Appended.Stored stored => Results.Json(
                new JsonObject { ["entries"] = new JsonArray([.. stored.Entries.Select(Stored)]) }
            ),
            Appended.Conflict(var taken) => Conflict(taken),
            Appended.Refused refused => Refused(refused),
            _ => throw new System.Diagnostics.UnreachableException(),
        };

    private static JsonObject Stored(StoredEntry entry) =>
        new()
        {
            ["id"] = entry.Id.ToString(),
            ["seq"] = entry.Seq,
            ["at"] = Shown.Of(entry.At),
            ["again"] = entry.Again,
        };

    private IResult Conflict(Guid taken) =>
        Results.Problem(
            statusCode: StatusCodes.Status409Conflict,
            title: words.Api("id-taken"),
            extensions: new Dictionary<string, object?>(StringComparer.Ordinal) { ["id"] = taken }
        );

    private IResult Refused(Appended.Refused refused) =>
        Results.Problem(
            statusCode: StatusCodes.Status422UnprocessableEntity,
            title: words.Api("refused"),
            extensions: new Dictionary<string, object?>(StringComparer.Ordinal)
            {
                ["objections"] = new JsonArray([
                    .. refused.Entries.SelectMany(entry =>
                        entry.Verdict.Objections.Select(o => ApiObjections.Shown(entry.Id, o, words))
                    ),
                ]),
            }
        );
}
