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

    public override IEnumerable<Objection> Objections(Floor before)
    {
        var (tank, state) = before.Tank(TankId);
        foreach (var objection in Occupied.Objections(tank, state))
        {
            yield return objection;
        }

        if (Contents is Holding.Beer)
        {
            yield return Objection.Impossible("beer-by-batch", new Number("tank", tank.Code));
        }

        if (DriedOn is { } dried && dried > before.Rules.DateOf(At))
        {
            yield return Objection.Impossible("dried-later", new("tank", tank.Code), new("dried", dried));
        }
    }

    public override TankState Change(TankState tank, Listed<HandedOver> handed) =>
        tank with
        {
            Soil = Soil,
            SoilSince = Moment.Of(this),
            Gas = Gas,
            Closure = Closure,
            IsPressureInDoubt = Closure is Closure.Closed or Closure.Sealed,
            Contents = Contents is Holding.Nothing or Holding.Beer ? tank.Contents : new(Contents, Moment.Of(this)),
            SanitizerIn = Contents is Holding.Sanitizer ? Moment.Of(this) : null,
            Sanitized = Soil is Soil.Sanitized ? Moment.Of(this) : null,
            StretchesSinceDrained = Soil is Soil.Sanitized ? [new(Closure, Gas, At)] : [],
            Bath = Contents is Holding.Bath ? new(Moment.Of(this), Bath ?? BathKind.AcidSoak, IsRinsed: false) : null,
            Dried = DriedOn is { } day ? new(Noon(day), Id) : null,
            DriedAfter = DriedOn is null ? null : Bath,
            PassivationUnknown = DriedOn is null && !IsNeverPassivated ? Moment.Of(this) : null,
            ExposedTo = [.. ExposedTo.Distinct().Select(kind => new Exposure(Moment.Of(this), kind, ""))],
        };

    // A fold knows no time zone: noon UTC falls on the day meant almost everywhere.
    private static DateTimeOffset Noon(DateOnly day) => new(day, new TimeOnly(12, 0), TimeSpan.Zero);
}
