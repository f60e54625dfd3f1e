using BrewFloor.Domain.Log;
using BrewFloor.Domain.Tanks;

namespace BrewFloor.Domain.Cleaning;

/// <summary>The liquid left the tank.</summary>
/// <param name="TankId">The tank.</param>
/// <param name="Held">How it stands since.</param>
public sealed record Drained(Guid TankId, Closure Held) : LogEntry
{
    /// <summary>It was pushed out with carbon dioxide, so the tank stands under it.</summary>
    public bool IsUnderCarbonDioxide { get; init; }

    public override IEnumerable<Subject> Subjects => [Subject.Tank(TankId)];

    public override IEnumerable<Objection> Objections(Floor before) => [];
}
