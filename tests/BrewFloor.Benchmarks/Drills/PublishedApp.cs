using System.Diagnostics;

namespace BrewFloor.Benchmarks.Drills;

/// <summary>The app as it is run: published by the one script, once for the same sources.</summary>
internal static class PublishedApp
{
    /// <summary>The folder with the solution in it.</summary>
    public static string Root { get; } = FindRoot();

    /// <summary>Where it was published to.</summary>
    public static async Task<string> FolderAsync(CancellationToken stop)
    {
        // The script's own function, with the words that make the script itself do nothing but print its usage.
        const string Published = "source ./brewfloor help >/dev/null; published";
        using var bash = Process.Start(
            new ProcessStartInfo("bash", ["-c", Published])
            {
                WorkingDirectory = Root,
                RedirectStandardOutput = true,
                UseShellExecute = false,
            }
        )!;
        var said = await bash.StandardOutput.ReadToEndAsync(stop);
        await bash.WaitForExitAsync(stop);
        return bash.ExitCode == 0
            ? said.Trim()
            : throw new InvalidOperationException("BrewFloor could not be published; the lines above say why.");
    }

    private static string FindRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "BrewFloor.sln")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new InvalidOperationException("Run this from inside the repository.");
    }
}
