using System.Diagnostics;

namespace BrewFloor.Web.Tests.Hosting;

/// <summary>What whoever runs the floor types, in a process of its own.</summary>
internal static class AppCommand
{
    /// <param name="settings">Its environment beside the test's.</param>
    public static async Task<(int Code, string Said)> RunAsync(
        IReadOnlyDictionary<string, string> settings,
        params string[] words
    )
    {
        var app = Path.Combine(AppContext.BaseDirectory, "BrewFloor.Web.dll");
        var start = new ProcessStartInfo("dotnet", [app, .. words])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
        };
        foreach (var (name, value) in settings)
        {
            start.Environment[name] = value;
        }

        using var process = Process.Start(start)!;
        process.StandardInput.Close();
        var (said, failed) = (
            process.StandardOutput.ReadToEndAsync(FloorApp.Stop),
            process.StandardError.ReadToEndAsync(FloorApp.Stop)
        );
        await process.WaitForExitAsync(FloorApp.Stop);
        return (process.ExitCode, (await said + await failed).Trim());
    }
}
