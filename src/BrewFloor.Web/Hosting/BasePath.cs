using System.Text.RegularExpressions;

namespace BrewFloor.Web.Hosting;

/// <summary>Below which path of its host the floor stands: a proxy may serve other things beside it.</summary>
/// <remarks>
/// Pages lead on by links relative to their base, so that one place knows the path. A proxy may pass the path on as it was asked,
/// or take it off before: both arrive at the same page.
/// </remarks>
public static partial class BasePath
{
    public const string Variable = "BREWFLOOR_BASE_PATH";

    /// <param name="text">A path of letters, digits and <c>- _ . ~</c>, with or without slashes around it; null: the host's root.</param>
    /// <exception cref="StartProblemException">It is something else.</exception>
    public static PathString Parse(string? text)
    {
        var path = (text ?? "").Trim().Trim('/');
        return path.Length == 0 ? PathString.Empty
            : Segments().IsMatch(path) && !path.Split('/').Any(part => part is "." or "..") ? new($"/{path}")
            : throw new StartProblemException($"{Variable} holds \"{text}\", which is not a path like /floor.");
    }

    /// <summary>Before anything looks at where somebody asks.</summary>
    public static void UseBasePath(this IApplicationBuilder app, PathString below)
    {
        if (!below.HasValue)
        {
            return;
        }

        app.Use(
            (context, next) =>
            {
                if (context.Request.Path.StartsWithSegments(below, StringComparison.Ordinal, out var rest))
                {
                    context.Request.Path = rest.HasValue ? rest : "/";
                }

                context.Request.PathBase = below;
                return next(context);
            }
        );
    }

    [GeneratedRegex(
        @"^[A-Za-z0-9._~-]+(/[A-Za-z0-9._~-]+)*\z",
        RegexOptions.ExplicitCapture,
        matchTimeoutMilliseconds: 100
    )]
    private static partial Regex Segments();
}
