using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Tanks;

/// <summary>A thermometer or gauge was held against a better one.</summary>
public sealed record ProbeCalibrated(Guid TankId, string What, bool Passed) : LogEntry
{
    /// <summary>What it was off by, in its own unit, before it was set right.</summary>
    public double? OffBy { get; init; }

    public override Nature Nature => Nature.Reading;

    public override IEnumerable<Subject> Subjects => [Subject.Tank(TankId)];

    public override IEnumerable<Objection> Objections(Floor before) => [];

    public override TankState Change(TankState tank, Listed<HandedOver> handed) =>
        Passed ? tank with { ProbeCalibrated = Moment.Of(this) } : tank;
}
