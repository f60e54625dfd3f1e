using System.Data.Common;
using System.Net;
using System.Text;
using BrewFloor.Store.House;
using BrewFloor.Store.Log;
using BrewFloor.Store.PrivateServer;
using BrewFloor.Web.Shell;
using Microsoft.Extensions.Primitives;

namespace BrewFloor.Web.Hosting;

/// <summary>What is served while the database cannot be reached: when it last could, and a form that keeps what was typed.</summary>
internal static class FloorAway
{
    private static readonly string[] Unaffected =
    [
        "/health",
        Metrics.Address,
        "/favicon.svg",
        "/floor.css",
        "/tokens.css",
        "/floor.js",
        "/fonts",
    ];

    public static IApplicationBuilder UseFloorAway(this IApplicationBuilder app) =>
        app.Use(
            static async (context, next) =>
            {
                var isReady = context.RequestServices.GetRequiredService<Readiness>().IsReady;
                if (
                    isReady
                    || Unaffected.Any(path => context.Request.Path.StartsWithSegments(path, StringComparison.Ordinal))
                )
                {
                    await TryAsync(context, next);
                    return;
                }

                // The database wasn't asked at all.
                await AnswerAsync(context, words => [words["away"], words["away-why"], Since(context, words)]);
            }
        );

    // Lost under way: a commit may have gone through and its answer not, so nothing is claimed of what was sent.
    private static async Task TryAsync(HttpContext context, RequestDelegate next)
    {
        try
        {
            await next(context);
        }
        catch (Exception e) when (IsOutOfReach(e) && !context.Response.HasStarted)
        {
            var isBusy = Busy.Is(e);
            if (!isBusy)
            {
                context.RequestServices.GetRequiredService<FloorDatabase>().Doubt();
            }

            if (IsForPrograms(context))
            {
                throw; // they have answers of their own for it
            }

            await AnswerAsync(
                context,
                words =>
                    isBusy
                        ? [words["busy"], words["busy-why"]]
                        : [words["away"], words["away-unsure"], Since(context, words)]
            );
        }
    }

    private static bool IsForPrograms(HttpContext context) =>
        context.Request.Path.StartsWithSegments("/api", StringComparison.OrdinalIgnoreCase);

    /// <summary>The connection broke, the server is going or coming, or somebody holds for too long what is needed: come again.</summary>
    internal static bool IsOutOfReach(Exception e) =>
        e is DbException { IsTransient: true } || Busy.Is(e) || (e.InnerException is { } inner && IsOutOfReach(inner));

    /// <param name="said">The heading, and the sentences below it.</param>
    private static async Task AnswerAsync(HttpContext context, Func<Wording, string[]> said)
    {
        context.Response.StatusCode = StatusCodes.Status503ServiceUnavailable;
        context.Response.Headers.RetryAfter = "2";
        context.Response.Headers.CacheControl = "no-store";
        if (IsForPrograms(context))
        {
            await Results
                .Problem(statusCode: 503, title: "The floor log can't be reached. Nothing was logged.")
                .ExecuteAsync(context);
            return;
        }

        context.Response.ContentType = "text/html; charset=utf-8";
        IEnumerable<KeyValuePair<string, StringValues>> typed =
            HttpMethods.IsPost(context.Request.Method) && context.Request.HasFormContentType
                ? (await context.Request.ReadFormAsync(context.RequestAborted)).Where(field => !IsSecret(field.Key))
                : [];
        var words = Words(context);
        await context.Response.WriteAsync(Page(context, words, typed, said(words)), context.RequestAborted);
    }

    // Built by hand: a page of the usual kind would ask the database who reads it.
    private static string Page(
        HttpContext context,
        Wording words,
        IEnumerable<KeyValuePair<string, StringValues>> typed,
        string[] said
    )
    {
        var kept = new StringBuilder();
        foreach (var (name, values) in typed)
        {
            foreach (var value in values)
            {
                kept.Append("<input type=\"hidden\" name=\"")
                    .Append(Encode(name))
                    .Append("\" value=\"")
                    .Append(Encode(value))
                    .Append("\">");
            }
        }

        var again =
            kept.Length == 0
                ? $"""<p><a class="press" href="{Encode(LocalPaths.Here(context))}">{Encode(words["away-again"])}</a></p>"""
                : $"""<form method="post">{kept}{Shown(typed)}<button class="press">{Encode(words["away-again"])}</button></form>""";
        return $"""
            <!doctype html><html lang="{words.Language}"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
            <title>{Encode(
                said[0]
            )} · BrewFloor</title><link rel="stylesheet" href="{LocalPaths.Root(context)}tokens.css"><link rel="stylesheet" href="{LocalPaths.Root(context)}floor.css"></head>
            <body><main id="main" class="narrow"><div class="objection stop" role="alert"><h1>{Encode(
                said[0]
            )}</h1>
            {string.Concat(said[1..].Select(line => $"<p>{Encode(line)}</p>"))}</div>{again}</main></body></html>
            """;
    }

    private static string Since(HttpContext context, Wording words) =>
        context.RequestServices.GetRequiredService<Readiness>().LastReachedAt is { } at
            ? words["away-since", new Domain.Log.Number("at", at)]
            : words["away-never"];

    // Nobody can be asked who reads; the clock is the site's as last read, as the form below was typed by it.
    private static Wording Words(HttpContext context) =>
        Reader.Of(
            new(),
            Languages.AskedBy(context.Request),
            context.RequestServices.GetRequiredService<RulesOnHand>().Zone,
            context.RequestServices.GetRequiredService<TimeProvider>().GetUtcNow()
        );

    private static string Shown(IEnumerable<KeyValuePair<string, StringValues>> typed)
    {
        var rows = typed
            .Where(field =>
                !field.Key.StartsWith('_') && field.Value.ToString().Length > 0 && !Guid.TryParse(field.Value, out _)
            )
            .Where(field => !field.Key.Contains('.', StringComparison.Ordinal))
            .Select(field => $"<div><dt>{Encode(field.Key)}</dt><dd>{Encode(field.Value)}</dd></div>");
        return $"""<dl class="facts paper">{string.Concat(rows)}</dl>""";
    }

    // Typed again rather than written into a page: a page may be kept by a browser.
    private static bool IsSecret(string field) =>
        field
            is "Input.Password"
                or "Input.Old"
                or "Input.New"
                or "credential"
                or "state"
                or Log.BrewerPart.PasswordField
                or Log.BrewerPart.CredentialField
                or Log.BrewerPart.StateField;

    private static string Encode(string? text) => WebUtility.HtmlEncode(text ?? "");
}
