using BrewFloor.Domain.Log;
using BrewFloor.Store.Log;
using BrewFloor.Web.Shell;
using Microsoft.AspNetCore.Mvc;
using Npgsql;

namespace BrewFloor.Web.Api;

/// <summary>Under /api every answer that isn't a yes is problem details (RFC 9457): a sentence, never a page, never a stack trace.</summary>
internal static partial class ApiProblems
{
    public static IApplicationBuilder UseApiProblems(this IApplicationBuilder app) =>
        app.UseWhen(
            context => context.Request.Path.StartsWithSegments("/api", StringComparison.OrdinalIgnoreCase),
            api => api.Use(AnswerAsync)
        );

    public static IResult Of(int status, Wording words, string key, params Number[] numbers) =>
        Results.Problem(statusCode: status, title: words.Api(key, numbers));

    public static IResult Of(UnreadableException e, Wording words) =>
        Results.Problem(
            statusCode: e.IsMissing ? StatusCodes.Status404NotFound : StatusCodes.Status400BadRequest,
            title: words.Api(e.IsMissing ? "not-there" : "unreadable"),
            detail: words.Api(e.Key, [.. e.Numbers]),
            extensions: new Dictionary<string, object?>(StringComparer.Ordinal) { ["field"] = e.Field }
        );

    private static async Task AnswerAsync(HttpContext context, RequestDelegate next)
    {
        try
        {
            await next(context);
        }
        catch (Exception e) when (!context.Response.HasStarted && !context.RequestAborted.IsCancellationRequested)
        {
            await Failed(context, e).ExecuteAsync(context);
            return;
        }

        var answer = context.Response;
        if (answer is { HasStarted: false, StatusCode: >= 400, ContentLength: null, ContentType: null })
        {
            if (answer.StatusCode is StatusCodes.Status401Unauthorized)
            {
                answer.Headers.WWWAuthenticate = BearerTokens.Known;
            }

            await Of(answer.StatusCode, Reader.Stranger, $"status-{answer.StatusCode}").ExecuteAsync(context);
        }
    }

    private static IResult Failed(HttpContext context, Exception e)
    {
        var words = Reader.Stranger;
        switch (e)
        {
            case UnreadableException unreadable:
                return Of(unreadable, words);
            case BadHttpRequestException bad:
                return Of(bad.StatusCode, words, $"status-{bad.StatusCode}");
            case var _ when Busy.Is(e):
                context.Response.Headers.RetryAfter = "1";
                return Of(StatusCodes.Status503ServiceUnavailable, words, "busy");
            case var _ when IsPassing(e):
                context.Response.Headers.RetryAfter = "1";
                return Of(StatusCodes.Status503ServiceUnavailable, words, "status-503");
            default:
                LogFailed(
                    context.RequestServices.GetRequiredService<ILogger<ProblemDetails>>(),
                    e,
                    context.Request.Path
                );
                return Of(StatusCodes.Status500InternalServerError, words, "status-500");
        }
    }

    // A server that went away: the same request may go through a moment later.
    private static bool IsPassing(Exception? e) =>
        e is NpgsqlException { IsTransient: true } || (e?.InnerException is { } inner && IsPassing(inner));

    [LoggerMessage(Level = LogLevel.Error, Message = "A request to {Path} failed")]
    private static partial void LogFailed(ILogger logger, Exception e, string path);
}
