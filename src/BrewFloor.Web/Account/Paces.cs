using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using BrewFloor.Web.Api;
using BrewFloor.Web.Backups;

namespace BrewFloor.Web.Account;

/// <summary>Who asks too often within a minute is told when to come again, before anything is read of it.</summary>
internal static class Paces
{
    /// <summary>Tries to come in from one address: enough for a club behind one router on a brew day, too few to guess with.</summary>
    public const int TriesAMinute = 20;

    /// <summary>Of the code from the console.</summary>
    public const int SetupsAMinute = 5;

    public static IApplicationBuilder UsePaces(this IApplicationBuilder app)
    {
        var pace = app.ApplicationServices.GetRequiredService<Pace>();
        var tokens = app.ApplicationServices.GetRequiredService<TokenPace>();
        return app.Use(
            (context, next) =>
            {
                if (LimitOf(context, tokens) is not var (who, most) || pace.Wait(who, most) is not { } wait)
                {
                    return next(context);
                }

                context.Response.StatusCode = StatusCodes.Status429TooManyRequests;
                SayWhen(context.Response, wait);
                return Task.CompletedTask;
            }
        );
    }

    /// <summary>In whole seconds, none too early.</summary>
    public static void SayWhen(HttpResponse answer, TimeSpan wait) =>
        answer.Headers.RetryAfter = Math.Max(1, Math.Ceiling(wait.TotalSeconds)).ToString(CultureInfo.InvariantCulture);

    private static (string Who, int Most)? LimitOf(HttpContext context, TokenPace tokens)
    {
        var request = context.Request;
        if (BearerTokens.AreUsedIn(request))
        {
            // By its hash: nothing here keeps a token, and a made-up one slows nobody else.
            var hash = SHA256.HashData(Encoding.UTF8.GetBytes(BearerTokens.SecretIn(request)!));
            return ($"token {Convert.ToHexString(hash)}", tokens.CallsAMinute);
        }

        var place = Guessing.Place(context.Connection.RemoteIpAddress);
        return !HttpMethods.IsPost(request.Method) ? null
            : IsSetup(request.Path) ? ($"setup {place}", SetupsAMinute)
            : IsATry(request.Path) ? ($"try {place}", TriesAMinute)
            : null;
    }

    private static bool IsSetup(PathString path) => path == "/setup" || path == RestoreUpload.Address;

    private static bool IsATry(PathString path) =>
        path == "/sign-in"
        || path == "/passkeys/sign-in"
        || path.StartsWithSegments("/invite", StringComparison.OrdinalIgnoreCase);
}
