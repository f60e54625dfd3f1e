using BrewFloor.Domain;
using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;
using Npgsql;

namespace BrewFloor.Store.Log;

/// <summary>What comes into being or goes in one transaction with the entries: the tanks of a spreadsheet, and that it was imported.</summary>
/// <remarks>The entries are judged as ever; a refusal takes back what was written beside them.</remarks>
internal sealed record Beside
{
    /// <summary>Tanks that are there for the entries, though they are not stored yet.</summary>
    public Listed<Tank> Tanks { get; init; }

    /// <summary>Locked and read as well.</summary>
    public Listed<Subject> Subjects { get; init; }

    /// <summary>Writes once the subjects are locked; false: it is not to be, and all of it is taken back.</summary>
    public required Func<NpgsqlConnection, Opened, CancellationToken, Task<bool>> WriteAsync { get; init; }

    /// <summary>Nothing: only looked at.</summary>
    public static Beside Seen(Listed<Tank> tanks) =>
        new() { Tanks = tanks, WriteAsync = static (_, _, _) => Task.FromResult(true) };
}
