using System.Globalization;
using BrewFloor.Store.PrivateServer;

namespace BrewFloor.Web.Hosting;

/// <summary>What the process is started with, from the command line and the environment.</summary>
/// <param name="Command">"serve", or one of the short commands.</param>
/// <param name="Words">What follows a short command: "add", "Ines".</param>
/// <param name="DataFolder">Where the private database, the keys and the log live.</param>
/// <param name="Port">0: any free one.</param>
public sealed record StartOptions(string Command, IReadOnlyList<string> Words, string DataFolder, int Port)
{
    private static readonly string[] Flags = ["--lan", "--demo", "--demo-open", "--plain"];
    private static readonly string[] Valued = ["--data", "--port", "--role", "--scope"];

    /// <summary>Listens on the local network, not only on this machine.</summary>
    public bool IsOnLan { get; init; }

    /// <summary>Fills an empty database with the demo scenario.</summary>
    public bool IsDemo { get; init; }

    /// <summary>A backup that is not encrypted.</summary>
    public bool IsPlain { get; init; }

    /// <summary>Values of a short command's own options: "--role", "--scope".</summary>
    public IReadOnlyDictionary<string, string> Named { get; init; } =
        new Dictionary<string, string>(StringComparer.Ordinal);

    /// <summary>Reads the command line; what it cannot read is a sentence.</summary>
    /// <exception cref="StartProblemException">An unknown option, a missing value, a port that is none.</exception>
    public static StartOptions Parse(IReadOnlyList<string> args, Func<string, string?> environment)
    {
        var (words, named, flags) = Sorted(args);
        if (flags.Contains("--lan") && flags.Contains("--demo") && !flags.Contains("--demo-open"))
        {
            throw new StartProblemException(
                "The demo's passwords stand on this console: it is not opened to the network without --demo-open."
            );
        }

        return new(
            words.FirstOrDefault() ?? "serve",
            [.. words.Skip(1)],
            DataIn(named, environment),
            PortIn(named, environment)
        )
        {
            IsOnLan = flags.Contains("--lan"),
            IsDemo = flags.Contains("--demo") || flags.Contains("--demo-open"),
            IsPlain = flags.Contains("--plain"),
            Named = named,
        };
    }

    private static (List<string> Words, Dictionary<string, string> Named, HashSet<string> Flags) Sorted(
        IReadOnlyList<string> args
    )
    {
        var (words, flags) = (new List<string>(), new HashSet<string>(StringComparer.Ordinal));
        var named = new Dictionary<string, string>(StringComparer.Ordinal);
        for (var i = 0; i < args.Count; i++)
        {
            if (!args[i].StartsWith("--", StringComparison.Ordinal))
            {
                words.Add(args[i]);
            }
            else if (Flags.Contains(args[i], StringComparer.Ordinal))
            {
                flags.Add(args[i]);
            }
            else if (Valued.Contains(args[i], StringComparer.Ordinal))
            {
                named[args[i]] =
                    i + 1 < args.Count ? args[++i] : throw new StartProblemException($"{args[i]} needs a value.");
            }
            else if (Valued.Contains(args[i].Split('=')[0], StringComparer.Ordinal))
            {
                var (name, value) = (args[i].Split('=')[0], args[i].Split('=', 2)[1]);
                named[name] = value;
            }
            else if (!args[i].Contains('=', StringComparison.Ordinal)) // --key=value is the framework's own
            {
                throw new StartProblemException(
                    $"Unknown option {args[i]}. Known: {string.Join(", ", [.. Flags, .. Valued])}."
                );
            }
        }

        return (words, named, flags);
    }

    private static string DataIn(Dictionary<string, string> named, Func<string, string?> environment) =>
        Path.GetFullPath(
            named.GetValueOrDefault("--data") ?? environment("BREWFLOOR_DATA") ?? PrivateServerOptions.UsualFolder
        );

    private static int PortIn(Dictionary<string, string> named, Func<string, string?> environment)
    {
        var text = named.GetValueOrDefault("--port") ?? environment("BREWFLOOR_PORT") ?? "8080";
        return int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var port) && port <= 65_535
            ? port
            : throw new StartProblemException($"The port must be 0 to 65535, not \"{text}\".");
    }
}

/// <summary>The process cannot be started so; the message is a sentence that says what to do.</summary>
public sealed class StartProblemException(string message) : Exception(message);
