using BrewFloor.Domain.Items;

namespace BrewFloor.Domain.Log;

/// <summary>Objections that every kind of entry shares; they come before its own.</summary>
public static class EveryKind
{
    public const string TankRetired = "tank-retired";

    public static IEnumerable<Objection> Objections(LogEntry entry, Floor before) =>
        [.. Retired(entry, before), .. entry is ITakesStock taking ? taking.StockObjections(before) : []];

    /// <summary>Impossible: a tank that is gone takes notes, corrections and strikes, nothing else.</summary>
    private static IEnumerable<Objection> Retired(LogEntry entry, Floor before) =>
        entry is Noted or Corrected or Struck
            ? []
            : from tank in before.Tanks
            where tank.Thing.IsRetired && entry.Subjects.Contains(tank.State.Subject)
            select Objection.Impossible(
                TankRetired,
                new("tank", tank.Thing.Code),
                new("retired", tank.Thing.RetiredOn)
            );
}
