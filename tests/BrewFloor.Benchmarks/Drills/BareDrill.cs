using System.Diagnostics;

namespace BrewFloor.Benchmarks.Drills;

/// <summary>Both commands of the README on a machine that has Debian's smallest system and the .NET SDK, and nothing else.</summary>
/// <remarks>The machine is a folder with a system of its own, made and left by build/bare.sh, which needs root and debootstrap.</remarks>
internal static class BareDrill
{
    public const string Name = "bare";

    public static async Task<BareOutcome> RunAsync(string under, CancellationToken stop)
    {
        var folder = Path.Combine(under, $"brewfloor-bare-{Environment.ProcessId}");
        try
        {
            return BareOutcome.Read(await RunScriptAsync(folder, stop));
        }
        finally
        {
            if (Directory.Exists(folder))
            {
                Directory.Delete(folder, recursive: true);
            }

            File.Delete(folder + ".log");
        }
    }

    // In namespaces of its own: what it mounts and starts is gone when it ends, however it ends.
    private static async Task<IReadOnlyList<string>> RunScriptAsync(string folder, CancellationToken stop)
    {
        string[] words =
        [
            "--mount",
            "--pid",
            "--fork",
            "--kill-child",
            "--mount-proc",
            "bash",
            Path.Combine(PublishedApp.Root, "build", "bare.sh"),
            PublishedApp.Root,
            folder,
        ];
        using var unshare = Process.Start(
            new ProcessStartInfo("unshare", words) { RedirectStandardOutput = true, UseShellExecute = false }
        )!;
        var lines = new List<string>();
        while (await unshare.StandardOutput.ReadLineAsync(stop) is { } line)
        {
            Console.WriteLine("  " + line);
            lines.Add(line);
        }

        await unshare.WaitForExitAsync(stop);
        return lines;
    }
}
