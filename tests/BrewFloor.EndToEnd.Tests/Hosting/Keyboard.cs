using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;
using BrewFloor.Benchmarks.Drills;
using BrewFloor.Store.Tests.Postgres;

namespace BrewFloor.EndToEnd.Tests.Hosting;

/// <summary>Whoever sits at the machine and types what the docs say, in a folder where the one script lies.</summary>
internal sealed partial class Keyboard : IDisposable
{
    private const string Passphrase = "hops drip on cold stone";

    private readonly DirectoryInfo _folder = Directory.CreateDirectory(
        Path.Combine(Scratch.Root, $"bf-docs-{Environment.ProcessId}")
    );
    private readonly int _port = AppProcess.FreePort();
    private Process? _app;

    public Keyboard()
    {
        _folder.CreateSubdirectory("backups"); // a nightly backup goes where somebody made room for it
        File.CreateSymbolicLink(PathOf("brewfloor"), Path.Combine(PublishedApp.Root, "brewfloor"));
        File.WriteAllText(PathOf("passphrase"), Passphrase);
        Address = new($"http://localhost:{_port}");
    }

    public Uri Address { get; }

    /// <summary>What the docs leave to be named: FILE.</summary>
    public string BackupFile { get; set; } = "floor.backup";

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    /// <summary>In the docs' words; the places it names lie in this folder.</summary>
    /// <returns>What it printed; it ended well.</returns>
    public async Task<string> TypeAsync(string command)
    {
        using var bash = Start(command);
        var errors = bash.StandardError.ReadToEndAsync(Stop);
        var said = await bash.StandardOutput.ReadToEndAsync(Stop);
        await bash.WaitForExitAsync(Stop);
        Assert.True(bash.ExitCode is 0, $"{command} ended with {bash.ExitCode}:\n{said}{await errors}");
        return said;
    }

    /// <summary>A command that goes on until somebody stops it, once its page is there.</summary>
    public async Task TypeAndWaitAsync(string command)
    {
        _app = Start(string.Create(CultureInfo.InvariantCulture, $"{command} --port {_port}"));
        var errors = _app.StandardError.ReadToEndAsync(Stop);
        var said = _app.StandardOutput.ReadToEndAsync(Stop);
        using var http = new HttpClient { BaseAddress = Address };
        while (!await AppProcess.IsReadyAsync(http, Stop))
        {
            Assert.True(!_app.HasExited, $"{command} ended:\n{(_app.HasExited ? await said + await errors : "")}");
            await Task.Delay(TimeSpan.FromMilliseconds(100), Stop);
        }
    }

    /// <summary>As Ctrl+C, and its end.</summary>
    public async Task StopAsync()
    {
        await AppProcess.StopAsync(_app!, Stop);
        _app!.Dispose();
        _app = null;
    }

    public void Dispose()
    {
        if (_app is { HasExited: false })
        {
            _app.Kill(entireProcessTree: true);
            _app.WaitForExit();
        }

        _app?.Dispose();
        _folder.Delete(recursive: true);
    }

    private string PathOf(string name) => Path.Combine(_folder.FullName, name);

    private Process Start(string command)
    {
        var typed = Placeholder()
            .Replace(
                command,
                place =>
                    place.Value is "NAME" ? "Olga"
                    : place.Value is "FILE" ? BackupFile
                    : "restored"
            )
            .Replace("/srv/", _folder.FullName + "/", StringComparison.Ordinal)
            .Replace("/etc/brewfloor/passphrase", PathOf("passphrase"), StringComparison.Ordinal);
        var bash = new ProcessStartInfo("bash", ["-c", $"exec env {typed}"]) // env: some begin with a variable
        {
            WorkingDirectory = _folder.FullName,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            RedirectStandardInput = true,
            UseShellExecute = false,
        };
        bash.Environment["BREWFLOOR_DATA"] = PathOf("data");
        bash.Environment["BREWFLOOR_BACKUP_PASSPHRASE_FILE"] = PathOf("passphrase"); // nobody to ask
        bash.Environment.Remove("ConnectionStrings__BrewFloor");
        return Process.Start(bash)!;
    }

    [GeneratedRegex(@"\b(NAME|FILE|DIR)\b", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Placeholder();
}
