using UnitsNet;

namespace BrewFloor.Brewing.Cleaning;

/// <summary>One point of a pump's curve, as its maker printed it.</summary>
/// <param name="Flow">In L/min.</param>
/// <param name="Head">Pressure it gives at that flow, kPa.</param>
public readonly record struct PumpPoint(VolumeFlow Flow, Pressure Head);

/// <summary>What a spray device asks of a pump.</summary>
/// <param name="Flow">It needs, L/min.</param>
/// <param name="Spray">Its rated pressure, kPa: 100 to 250 for a static ball.</param>
/// <param name="Rise">From pump to ball, -2 to 20 m.</param>
/// <param name="Friction">In hoses and fittings at that flow, kPa (<see cref="Transfers.HoseFlow"/>).</param>
public readonly record struct SprayDuty(VolumeFlow Flow, Pressure Spray, Length Rise, Pressure Friction);

/// <summary>Whether a pump does it.</summary>
/// <param name="Needed">Spray pressure, rise and friction, kPa.</param>
/// <param name="Available">What the pump gives at that flow, kPa.</param>
public readonly record struct PumpVerdict(Pressure Needed, Pressure Available)
{
    /// <summary>The pump gives at least what is needed.</summary>
    public bool IsEnough => Available >= Needed;
}

/// <summary>A pump, by points of its curve; straight lines between them, nothing guessed beyond.</summary>
/// <remarks>Arithmetic: needed head = spray pressure + rise + friction. Water at 20 °C.</remarks>
public sealed class PumpCurve
{
    private readonly PumpPoint[] _points;

    private PumpCurve(PumpPoint[] points) => _points = points;

    /// <summary>A curve as printed, from the least flow up.</summary>
    /// <param name="points">Flows from 0 to 100,000 L/min that rise, heads from 0 to 5,000 kPa that don't.</param>
    /// <returns>
    /// Refused with the row: fewer than two points (<c>too-few-points</c>), out of range, a flow that doesn't rise or a
    /// head that does (<c>out-of-range</c>).
    /// </returns>
    public static Outcome<PumpCurve> Of(IEnumerable<PumpPoint> points)
    {
        PumpPoint[] curve = [.. points];
        if (curve.Length < 2)
        {
            return new Refusal("too-few-points", "pump-curve", "2", "");
        }

        return curve.Select((_, i) => RefusalOf(curve, i)).FirstOrDefault(r => r is not null) is { } refusal
            ? refusal
            : new PumpCurve(curve);
    }

    /// <summary>The pressure at a flow, kPa.</summary>
    /// <param name="flow">From the first to the last point.</param>
    /// <returns>Refused outside.</returns>
    public Outcome<Pressure> HeadAt(VolumeFlow flow)
    {
        var x = flow.LitersPerMinute;
        if (
            Accepted.Between(_points[0].Flow.LitersPerMinute, _points[^1].Flow.LitersPerMinute, x, "flow", "L/min") is
            { } refusal
        )
        {
            return refusal;
        }

        var above = Math.Max(1, Array.FindIndex(_points, p => p.Flow.LitersPerMinute >= x));
        var (a, b) = (_points[above - 1], _points[above]);
        var share = (x - a.Flow.LitersPerMinute) / (b.Flow.LitersPerMinute - a.Flow.LitersPerMinute);
        return Pressure.FromKilopascals(a.Head.Kilopascals + ((b.Head.Kilopascals - a.Head.Kilopascals) * share));
    }

    /// <summary>Holds a spray device's needs against the curve.</summary>
    /// <param name="duty">What it needs.</param>
    /// <returns>Refused outside.</returns>
    public Outcome<PumpVerdict> Judge(SprayDuty duty)
    {
        var head = HeadAt(duty.Flow);
        var refusal =
            head.Refusal
            ?? Accepted.Between(0, 1000, duty.Spray.Kilopascals, "spray-pressure", "kPa")
            ?? Accepted.Between(-2, 20, duty.Rise.Meters, "rise", "m")
            ?? Accepted.Between(0, 1000, duty.Friction.Kilopascals, "friction", "kPa");
        return refusal is null
            ? new PumpVerdict(
                Pressure.FromKilopascals(
                    duty.Spray.Kilopascals + duty.Friction.Kilopascals + (0.998204 * 9.80665 * duty.Rise.Meters)
                ),
                head.Value
            )
            : refusal;
    }

    private static Refusal? RefusalOf(PumpPoint[] curve, int i)
    {
        var least = i == 0 ? 0 : Math.BitIncrement(curve[i - 1].Flow.LitersPerMinute);
        var most = i == 0 ? 5000 : curve[i - 1].Head.Kilopascals;
        var refusal =
            Accepted.Between(least, 100_000, curve[i].Flow.LitersPerMinute, "flow", "L/min")
            ?? Accepted.Between(0, most, curve[i].Head.Kilopascals, "head", "kPa");
        return refusal is null ? null : refusal with { Row = i + 1 };
    }
}
