using System.Globalization;

namespace BrewFloor.Brewing.Tests;

/// <summary>A table of numbers in <c>samples</c>, one line a row under a line of names.</summary>
internal static class Table
{
    public static double[][] Read(string name) =>
        [
            .. File.ReadLines(Path.Combine(AppContext.BaseDirectory, "samples", name))
                .Skip(1)
                .Select(line => line.Split(',').Select(n => double.Parse(n, CultureInfo.InvariantCulture)).ToArray()),
        ];
}
