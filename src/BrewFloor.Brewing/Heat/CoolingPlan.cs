using UnitsNet;

namespace BrewFloor.Brewing.Heat;

/// <summary>What one tank asks of the cooling, all at once with the others.</summary>
/// <param name="Heat">Of its fermentation, W.</param>
/// <param name="Gain">Through its wall, W.</param>
/// <param name="Crash">To be taken out of it meanwhile, kJ; nothing where it isn't crashed.</param>
public readonly record struct TankLoad(Power Heat, Power Gain, Energy Crash);

/// <summary>A chiller, its bath and what hangs on it.</summary>
/// <param name="Steady">Fermentation and gains together, W.</param>
/// <param name="Crash">All crashes together, kJ.</param>
/// <param name="Spare">What the chiller has left for crashes, W; below zero where it can't even hold.</param>
/// <remarks>Sums, and t = Q / (P - gains). Check HE-11.</remarks>
public readonly record struct CoolingPlan(Power Steady, Energy Crash, Power Spare)
{
    /// <summary>The chiller holds what is fermenting.</summary>
    public bool Holds => Spare >= Power.Zero;

    /// <summary>All tanks on one chiller.</summary>
    /// <param name="chiller">Its power at the coldest coolant, 0 to 10,000 kW; 0 for a bath alone.</param>
    /// <param name="tanks">Each 0 to 10,000 kW and 0 to 100,000,000 kJ.</param>
    /// <returns>Refused outside, with the row of a tank.</returns>
    public static Outcome<CoolingPlan> Of(Power chiller, IReadOnlyList<TankLoad> tanks)
    {
        if (Accepted.Between(0, 10_000, chiller.InKilowatts(), "chiller", "kW") is { } refusal)
        {
            return refusal;
        }

        for (var i = 0; i < tanks.Count; i++)
        {
            var outside =
                Accepted.Between(0, 10_000, tanks[i].Heat.InKilowatts(), "heat", "kW")
                ?? Accepted.Between(0, 10_000, tanks[i].Gain.InKilowatts(), "gain", "kW")
                ?? Accepted.Between(0, 1e8, tanks[i].Crash.Kilojoules, "crash", "kJ");
            if (outside is not null)
            {
                return outside with { Row = i + 1 };
            }
        }

        var steady = tanks.Sum(t => t.Heat.InWatts() + t.Gain.InWatts());
        return new CoolingPlan(
            Power.FromWatts(steady),
            Energy.FromKilojoules(tanks.Sum(t => t.Crash.Kilojoules)),
            Power.FromWatts(chiller.InWatts() - steady)
        );
    }

    /// <summary>How long until every crash is done, with a cold bath to begin with.</summary>
    /// <param name="bath">What it takes up while it warms, 0 to 100,000,000 kJ.</param>
    /// <returns>In h; refused where the chiller has nothing to spare and the bath isn't enough.</returns>
    public Outcome<Duration> TimeToCrash(Energy bath)
    {
        if (Accepted.Between(0, 1e8, bath.Kilojoules, "bath", "kJ") is { } refusal)
        {
            return refusal;
        }

        var left = Math.Max(0, Crash.Kilojoules - bath.Kilojoules);
        return left <= 0 ? Duration.Zero
            : Accepted.Between(0.001, 1e7, Spare.InWatts(), "chiller-to-spare", "W") is { } tooWeak ? tooWeak
            : Duration.FromHours(left / Spare.InKilowatts() / 3600);
    }

    /// <summary>How long a bath alone carries the steady load: when the chiller is off, or too weak.</summary>
    /// <param name="bath">What it takes up while it warms, 0 to 100,000,000 kJ.</param>
    /// <returns>In h; refused where nothing loads it.</returns>
    public Outcome<Duration> BathLasts(Energy bath) =>
        (
            Accepted.Between(0, 1e8, bath.Kilojoules, "bath", "kJ")
            ?? Accepted.Between(0.001, 1e7, -Math.Min(0, Spare.InWatts()), "load-over-chiller", "W")
        )
            is { } refusal
            ? refusal
            : Duration.FromHours(bath.Kilojoules / -Spare.InKilowatts() / 3600);
}
