using BrewFloor.Brewing;
using BrewFloor.Brewing.Carbonation;
using BrewFloor.Brewing.Extract;
using BrewFloor.Domain.House;
using BrewFloor.Domain.Tanks;
using UnitsNet;

namespace BrewFloor.Domain.Batches;

/// <summary>At what gravity a tank is closed so that the beer makes the gas it is to hold, and what the valve is set to.</summary>
/// <param name="CloseAt">Apparent gravity.</param>
/// <param name="Gauge">What the valve is set to, kPa gauge: the valve holds the pressure, not the gravity.</param>
/// <param name="Wanted">What the beer is to hold.</param>
/// <param name="Warm">The warmest it was read since the yeast went in, °C, or the usual one of its kind.</param>
public sealed record ValvePlan(SpecificGravity CloseAt, Pressure Gauge, CarbonDioxideContent Wanted, Temperature Warm)
{
    private const double Most = 200; // %, the widest headspace the formula is made for

    /// <summary>For the beer in one tank.</summary>
    /// <param name="end">Where it will end, °P: from its forecast.</param>
    /// <returns>
    /// Refused: <c>no-gas-wanted</c>, <c>no-pressure-limit</c> (no rating, or no relief valve with its setting),
    /// <c>volume-unknown</c>, <c>gas-not-held</c> (the tank can't hold so much that warm, or the beer holds it already; the
    /// range says what it can), and what <see cref="Spunding.Plan"/> refuses.
    /// </returns>
    public static Outcome<ValvePlan> For(
        BatchState batch,
        Batch thing,
        InTank beer,
        Tank tank,
        DegreesPlato end,
        HouseRules rules
    )
    {
        if (thing.CarbonDioxideWanted is not { } wanted)
        {
            return No("no-gas-wanted");
        }

        if (tank.PressureLimit is not { } limit)
        {
            return No("no-pressure-limit");
        }

        if (beer.Volume is not { Liters: > 0 } volume)
        {
            return No("volume-unknown");
        }

        var warm = Temperature.FromDegreesCelsius(batch.WarmestOf(thing));
        var free = 100 * (tank.Total.Liters - volume.Liters) / volume.Liters;
        SpundingWish wish = new(wanted, warm, end, Ratio.FromPercent(Math.Clamp(free, 0, Most)), rules.Altitude);
        var planned = Spunding.Plan(wish, limit);
        return planned is { Refusal: { What: "carbonation" } beyond }
            ? beyond with
            {
                Code = "gas-not-held",
            }
            : from plan in planned
            from closeAt in plan.CloseAt.ToGravity()
            select new ValvePlan(closeAt, plan.Gauge, wanted, warm);
    }

    private static Refusal No(string code) => new(code, "valve", "", "");
}
