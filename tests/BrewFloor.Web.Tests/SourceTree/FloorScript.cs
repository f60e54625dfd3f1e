using System.Diagnostics;

namespace BrewFloor.Web.Tests.SourceTree;

/// <summary>
/// The script in a folder of its own, with a <c>dotnet</c> that only writes down how it was called and answers as told:
/// what the script makes of failures, without building anything.
/// </summary>
internal sealed class FloorScript : IDisposable
{
    private const string Dotnet = """
        #!/usr/bin/env bash
        echo "$*" >>"$CALLS"
        case "$1 $2" in
            "csharpier check") exit "${CHECK:-0}" ;;
            "ef migrations") exit "${MODEL:-0}" ;;
            "test --project")
                if [ "${SILENT:-}" = "$3" ]; then exit "${TESTS:-0}"; fi
                printf '  total: 4\n  failed: %s\n  succeeded: 3\n  skipped: 1\n' "${FAILED:-0}"
                exit "${TESTS:-0}"
                ;;
        esac
        case "$1" in
            build) exit "${BUILD:-0}" ;;
            publish)
                while [ "$1" != -o ]; do shift; done
                mkdir -p "$2" && exit "${PUBLISH:-0}"
                ;;
            */BrewFloor.Web.dll) echo "app:" "${@:2}" ;;
        esac
        """;

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("brewfloor-script-");

    public FloorScript()
    {
        foreach (var file in new[] { "brewfloor", "build/test.sh", "global.json", "BrewFloor.sln" })
        {
            Write(file, Tree.Read(file));
        }

        Write("Directory.Build.props", "<Project />");
        Write("Directory.Packages.props", "<Project />");
        Write("src/BrewFloor.Store/FloorDb.cs", "");
        Write("demo-seed/Story.cs", "");
        Write("bin/dotnet", Dotnet);
        Write("bin/initdb", "");
        Write("bin/chromium-headless-shell", "");
    }

    /// <summary>How dotnet was called, a line each.</summary>
    public string[] Calls => File.Exists(CallsFile) ? File.ReadAllLines(CallsFile) : [];

    private string CallsFile => Path.Combine(_folder.FullName, "calls");

    public void Write(string file, string text)
    {
        var path = Path.Combine(_folder.FullName, file);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllText(path, text);
        if (!OperatingSystem.IsWindows())
        {
            File.SetUnixFileMode(path, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        }
    }

    /// <param name="words">After <c>./brewfloor</c>.</param>
    /// <param name="told">What dotnet answers: <c>BUILD=1</c> is an exit code.</param>
    public async Task<Ran> RunAsync(string words, params string[] told)
    {
        var start = new ProcessStartInfo(
            "bash",
            ["brewfloor", .. words.Split(' ', StringSplitOptions.RemoveEmptyEntries)]
        )
        {
            WorkingDirectory = _folder.FullName,
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment["PATH"] = $"{_folder.FullName}/bin:{Environment.GetEnvironmentVariable("PATH")}";
        start.Environment["CALLS"] = CallsFile;
        foreach (var (name, value) in told.Select(word => word.Split('=')).Select(pair => (pair[0], pair[1])))
        {
            start.Environment[name] = value;
        }

        using var process = Process.Start(start)!;
        var output = process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        var errors = process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        return new(process.ExitCode, (await output).Trim(), (await errors).Trim());
    }

    public void Dispose() => _folder.Delete(recursive: true);

    public sealed record Ran(int Code, string Output, string Errors)
    {
        public string LastLine => Output.Split('\n')[^1];
    }
}
