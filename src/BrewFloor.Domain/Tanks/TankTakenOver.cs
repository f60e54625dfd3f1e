using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Tanks;

/// <summary>A tank joins the inventory as it was found; what nobody knows stays unknown.</summary>
public sealed record TankTakenOver(Guid TankId) : LogEntry
{
    public Soil Soil { get; init; }

    public Gas Gas { get; init; }

    public Closure Closure { get; init; }

    /// <summary>Beer comes with <c>batch-taken-over</c>; here it is nothing, or a liquid of cleaning.</summary>
    public Holding Contents { get; init; }

    /// <summary>The bath of the last passivation, if known.</summary>
    public BathKind? Bath { get; init; }

    /// <summary>The day it dried after that bath; null: not known.</summary>
    public DateOnly? DriedOn { get; init; }

    /// <summary>New steel that was never passivated, as against one whose history nobody knows.</summary>
    public bool IsNeverPassivated { get; init; }

    public Listed<ExposureKind> ExposedTo { get; init; }

    public override IEnumerable<Subject> Subjects => [Subject.Tank(TankId)];

    public override IEnumerable<Objection> Objections(Floor before) => [];
}
