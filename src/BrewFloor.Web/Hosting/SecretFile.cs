namespace BrewFloor.Web.Hosting;

/// <summary>A secret that is kept in a file, as containers hand them in: the variable of the same name with _FILE behind it names it.</summary>
internal static class SecretFile
{
    public const string Behind = "_FILE";

    /// <returns>What the variable says, or the content of the file; null: neither is set.</returns>
    /// <exception cref="StartProblemException">Both are set, or the file cannot be read.</exception>
    public static string? Of(string variable, Func<string, string?> setting)
    {
        var (said, file) = (Said(setting(variable)), Said(setting(variable + Behind)));
        return (said, file) switch
        {
            (not null, not null) => throw new StartProblemException(
                $"{variable} and {variable}{Behind} are both set: leave one of them out."
            ),
            (_, not null) => Read(file, variable + Behind),
            _ => said,
        };
    }

    private static string? Said(string? value) => string.IsNullOrWhiteSpace(value) ? null : value;

    private static string Read(string file, string variable)
    {
        try
        {
            return File.ReadAllText(file).Trim();
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new StartProblemException(
                $"{variable} names {file}, which cannot be read: {e.Message.TrimEnd('.')}. Name a file that BrewFloor may read."
            );
        }
    }
}
