using BrewFloor.Domain.Log;
using UnitsNet;

namespace BrewFloor.Domain.Tanks;

/// <summary>What is known of the pressure in a tank, and since when.</summary>
public static class Pressures
{
    // A longer climb forgets its lowest steps: they matter only for limits far below the pressure.
    private const int StepsKept = 12;

    /// <summary>0 kPa gauge.</summary>
    public static readonly Pressure None = Pressure.FromKilopascals(0);

    /// <summary>In kPa gauge; <see langword="null"/>: nobody knows.</summary>
    /// <remarks>A tank that was never read is at none while a way out is open, and unknown when it is shut.</remarks>
    public static Pressure? PressureNow(this TankState tank) =>
        tank switch
        {
            { IsPressureInDoubt: true } => null,
            { Pressure: { } known } => known.Value,
            { Closure: Closure.Open or Closure.Vented } => None,
            _ => null,
        };

    /// <summary>Above nothing, or nobody knows.</summary>
    public static bool MayBeUnderPressure(this TankState tank) => tank.PressureNow() is not { } known || known > None;

    /// <summary>Known by a gauge, or by a way out that is open. In kPa gauge.</summary>
    public static TankState AtPressure(this TankState tank, Pressure pressure, LogEntry entry)
    {
        var moment = Moment.Of(entry);
        return tank with
        {
            Pressure = new(pressure, moment),
            IsPressureInDoubt = false,
            PressureSteps = tank.PressureSteps.UpTo(pressure, moment),
        };
    }

    /// <summary>Shut with something in it that can raise the pressure: unknown until it is read.</summary>
    public static TankState InDoubt(this TankState tank) => tank with { IsPressureInDoubt = true };

    /// <summary>Since when it has been read above a limit (kPa gauge), without a reading at or below it in between.</summary>
    public static Moment? AboveSince(this TankState tank, Pressure limit) =>
        tank.PressureSteps.Where(step => step.Pressure > limit).Select(step => (Moment?)step.Since).FirstOrDefault();

    // Each step is higher than the one before it. A fall cuts the steps off at the new pressure, a rise adds one.
    private static Listed<PressureStep> UpTo(this Listed<PressureStep> steps, Pressure pressure, Moment moment)
    {
        Listed<PressureStep> below = steps.Without(step => step.Pressure >= pressure);
        if (pressure <= None)
        {
            return [];
        }

        var since = below.Count < steps.Count ? steps[below.Count].Since : moment;
        Listed<PressureStep> after = [.. below, new(pressure, since)];
        return after.Count > StepsKept ? [.. after.Skip(1)] : after;
    }
}
