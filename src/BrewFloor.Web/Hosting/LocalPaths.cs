namespace BrewFloor.Web.Hosting;

/// <summary>Where a form may send somebody back to: a page of this floor, never elsewhere, nor to what stands beside it on the host.</summary>
internal static class LocalPaths
{
    /// <param name="path">With the path the floor stands below.</param>
    public static string Safe(string? path, PathString below = default) =>
        path is ['/', ..] and not ['/', '/' or '\\', ..] && !path.Any(char.IsControl) && IsBelow(path, below)
            ? path
            : Root(below);

    /// <inheritdoc cref="Safe(string?, PathString)"/>
    public static string Safe(string? path, HttpContext http) => Safe(path, http.Request.PathBase);

    /// <summary>Where the floor begins on its host: the base of its pages, the path of its cookies.</summary>
    public static string Root(HttpContext http) => Root(http.Request.PathBase);

    /// <summary>The page that is looked at, from the host's root on.</summary>
    public static string Here(HttpContext http) => Page(http) + http.Request.QueryString;

    /// <summary>The same without its query.</summary>
    public static string Page(HttpContext http) => http.Request.PathBase.Add(http.Request.Path).ToUriComponent();

    // "/floor/../other" is beside it, too, and so is what a browser makes the same of.
    private static bool IsBelow(string path, PathString below) =>
        !below.HasValue
        || (
            path.StartsWith(Root(below), StringComparison.Ordinal)
            && new Uri(new Uri("http://floor.example"), path).AbsolutePath.StartsWith(
                Root(below),
                StringComparison.Ordinal
            )
        );

    private static string Root(PathString below) => $"{below}/";
}
