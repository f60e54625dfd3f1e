using System.Globalization;
using System.Text.RegularExpressions;

namespace BrewFloor.Store.PrivateServer;

/// <summary>One installed set of PostgreSQL's programs.</summary>
/// <param name="Folder">Where they are.</param>
/// <param name="Major">Their major version; data of one major is read by no other.</param>
internal sealed partial record PostgresPrograms(string Folder, int Major)
{
    public const int OldestMajor = 15;

    // Debian and Ubuntu, then Red Hat: each major in a folder of its own.
    private static readonly (string Root, string Versions)[] Installed =
    [
        ("/usr/lib/postgresql", "*"),
        ("/usr", "pgsql-*"),
    ];

    public string this[string program] => Path.Combine(Folder, program);

    /// <summary>Those of the given major, side by side with others or not; without one, the newest.</summary>
    /// <remarks>
    /// <c>initdb</c> comes with the server, <c>pg_dump</c> also without. <paramref name="dataOf"/> is the major that
    /// made the data, and the folder it is in.
    /// </remarks>
    /// <exception cref="PrivateServerProblem">None there, too old, or of other majors only.</exception>
    public static async Task<PostgresPrograms> FindAsync(
        PrivateServerOptions options,
        string program,
        (int Major, string Folder)? dataOf,
        CancellationToken stop
    )
    {
        var found = new List<PostgresPrograms>();
        var folders = Folders(options).Where(folder => File.Exists(Path.Combine(folder, program))).ToList();
        foreach (var folder in folders)
        {
            found.Add(new(folder, await MajorAsync(Path.Combine(folder, program), stop)));
        }

        return (found, dataOf) switch
        {
            ([], _) => throw ServerProblems.ProgramsMissing(program, string.Join(", ", Folders(options))),
            (_, { } data) => found.Find(p => p.Major == data.Major)
                ?? throw ServerProblems.OtherMajorVersion(data.Folder, data.Major, found.Select(p => p.Major)),
            _ when found.Max(p => p.Major) is < OldestMajor and var newest => throw ServerProblems.ProgramsTooOld(
                newest
            ),
            _ => found.MaxBy(p => p.Major)!,
        };
    }

    private static IEnumerable<string> Folders(PrivateServerOptions options) =>
        options.Programs is { } named
            ? [named]
            : Installed
                .Where(place => Directory.Exists(place.Root))
                .SelectMany(place => Directory.GetDirectories(place.Root, place.Versions))
                .Select(version => Path.Combine(version, "bin"))
                .Concat((Environment.GetEnvironmentVariable("PATH") ?? "").Split(':'))
                .Where(folder => folder.Length > 0)
                .Distinct(StringComparer.Ordinal);

    private static async Task<int> MajorAsync(string program, CancellationToken stop)
    {
        var said = (await Account.Own.RunAsync(program, ["--version"], stop)).Output;
        return Version.Match(said) is { Success: true } match
            ? int.Parse(match.Groups["major"].Value, CultureInfo.InvariantCulture)
            : 0;
    }

    // "initdb (PostgreSQL) 15.18 (Debian 15.18-0+deb12u1)"
    [GeneratedRegex(@"\(PostgreSQL\) (?<major>\d+)", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Version { get; }
}
