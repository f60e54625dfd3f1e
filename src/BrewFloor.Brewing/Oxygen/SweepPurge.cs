using UnitsNet;

namespace BrewFloor.Brewing.Oxygen;

/// <summary>Purging by letting gas run through, and by pushing water out.</summary>
/// <remarks>
/// Sweep: y = y0 exp(-V / space), if it mixes perfectly (Crowl, Louvar). A real sweep lies between one volume (it pushes
/// the air ahead of it) and worse than this (it runs past): common practice, no source. CO2 makes no lasting blanket.
/// Displacement: only what wasn't filled stays. Check OX-06.
/// </remarks>
public static class SweepPurge
{
    /// <summary>Gas to let through, as measured in the space, L.</summary>
    /// <param name="space">What is purged, 0.01 to 10,000,000 L.</param>
    /// <param name="before">Oxygen, 0 to 100 %.</param>
    /// <param name="wanted">Oxygen, from 0.0001 % to the one before.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<Volume> GasFor(Volume space, VolumeConcentration before, VolumeConcentration wanted) =>
        (
            Accepted.SomeLitres(space, "space")
            ?? Accepted.Between(0.0001, 100, before.Percent, "oxygen", "%")
            ?? Accepted.Between(0.0001, before.Percent, wanted.Percent, "oxygen-wanted", "%")
        )
            is { } refusal
            ? refusal
            : Volume.FromLiters(space.Liters * Math.Log(before.Percent / wanted.Percent));

    /// <summary>Oxygen left after so much gas, by volume; the inverse of <see cref="GasFor"/>.</summary>
    /// <param name="space">What is purged, 0.01 to 10,000,000 L.</param>
    /// <param name="before">Oxygen, 0 to 100 %.</param>
    /// <param name="gas">Let through, 0 to 10,000,000 L.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<VolumeConcentration> After(Volume space, VolumeConcentration before, Volume gas) =>
        (
            Accepted.SomeLitres(space, "space")
            ?? Accepted.Between(0, 100, before.Percent, "oxygen", "%")
            ?? Accepted.Litres(gas, "gas")
        )
            is { } refusal
            ? refusal
            : VolumeConcentration.FromPercent(before.Percent * Math.Exp(-gas.Liters / space.Liters));

    /// <summary>Oxygen left after a tank was filled with water and pushed empty with pure CO2, by volume.</summary>
    /// <param name="unfilled">Air that stayed above the water, of the tank, 0 to 100 %.</param>
    /// <returns>Refused outside.</returns>
    public static Outcome<VolumeConcentration> AfterDisplacement(Ratio unfilled) =>
        Accepted.Between(0, 100, unfilled.Percent, "unfilled", "%") is { } refusal
            ? refusal
            : VolumeConcentration.FromPercent(unfilled.Percent * IdealGas.OxygenInAir);
}
