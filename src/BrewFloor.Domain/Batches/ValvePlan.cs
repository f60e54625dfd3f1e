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
    /// <summary>
    /// When it is expected to stand there; null where hops went in or it lies in several tanks, so that only its readings say.
    /// </summary>
    public BatchForecast? Forecast { get; init; }

    /// <summary>For the beer in one tank, by its own readings and plan, so that job, page and programs say the same.</summary>
    /// <returns>
    /// Refused: <c>no-gas-wanted</c>, <c>no-pressure-limit</c> (no rating, or no relief valve with its setting),
    /// <c>volume-unknown</c>, <c>gas-not-held</c> (the tank can't hold so much that warm, or the beer holds it already; the
    /// range says what it can), what <see cref="Forecasting"/> refuses, and what <see cref="Spunding.Plan"/> does.
    /// </returns>
    public static Outcome<ValvePlan> For(
        BatchState batch,
        Batch thing,
        InTank beer,
        Tank tank,
        HouseRules rules,
        DateTimeOffset now
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

        var forecast = batch.ForecastOf(thing, [], rules, now);
        if (EndOf(forecast, thing) is not { } end)
        {
            return forecast.Refusal!;
        }

        var warm = Temperature.FromDegreesCelsius(batch.WarmestOf(thing));
        var free = Ratio.FromPercent(Math.Max(0, 100 * (tank.Total.Liters - volume.Liters) / volume.Liters));
        var planned = Spunding.Plan(new(wanted, warm, end, free, rules.Altitude), limit);
        return planned is { Refusal: { What: "carbonation" } beyond }
            ? beyond with
            {
                Code = "gas-not-held",
            }
            : from plan in planned
            from closeAt in plan.CloseAt.ToGravity()
            select new ValvePlan(closeAt, plan.Gauge, wanted, warm)
            {
                Forecast = forecast.IsDone ? forecast.Value : null,
            };
    }

    /// <summary>Where a forecast sees it end; where hops or a second tank broke it, its limit of attenuation.</summary>
    private static DegreesPlato? EndOf(Outcome<BatchForecast> forecast, Batch thing) =>
        forecast.Gives(out var foretold) ? foretold.Outlook.Final.Likely
        : forecast.Refusal is { Code: "fall-broken" or "several-tanks" } && thing.LimitOfAttenuation is { } limit
            ? new DegreesPlato(Strength.Plato(limit))
        : null;

    private static Refusal No(string code) => new(code, "valve", "", "");
}
