using System.Globalization;

namespace BrewFloor.Benchmarks.Drills;

/// <summary>What the numbers were measured on.</summary>
internal static class Machine
{
    /// <summary>Cores, memory, system.</summary>
    public static string Words { get; } =
        string.Create(
            CultureInfo.InvariantCulture,
            $"{Environment.ProcessorCount} cores, {GC.GetGCMemoryInfo().TotalAvailableMemoryBytes / 1024d / 1024 / 1024:0} GB, {System()}"
        );

    /// <summary>How many processes waited for a core in the last minute.</summary>
    public static string Load => File.ReadAllText("/proc/loadavg").Split(' ')[0];

    private static string System() =>
        File.ReadLines("/etc/os-release")
            .FirstOrDefault(line => line.StartsWith("PRETTY_NAME=", StringComparison.Ordinal))
            ?.Split('=')[1]
            .Trim('"')
        ?? "Linux";
}
