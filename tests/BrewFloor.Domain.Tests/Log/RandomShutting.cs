using BrewFloor.Domain.Tanks;
using UnitsNet;

namespace BrewFloor.Domain.Tests.Log;

/// <summary>Entries that open, shut, take apart and test.</summary>
internal static class RandomShutting
{
    public static readonly Dictionary<string, Maker> Makers = new()
    {
        ["opened"] = (r, floor) => new Opened(r.TankId(floor)) { What = r.OneOf("Lid", "Manway", null) },
        ["closed"] = (r, floor) =>
            new Closed(r.TankId(floor))
            {
                Closure = r.OneOf(Closure.Vented, Closure.Vented, Closure.Closed, Closure.Sealed),
            },
        ["vented"] = (r, floor) => new Vented(r.TankId(floor)),
        ["aired"] = (r, floor) => new Aired(r.TankId(floor)),
        ["purged"] = (r, floor) =>
            r.Tank(floor, (tank, state) => tank.PressureLimit is not null && !state.HoldsBeer) is { } tank
                ? new Purged(tank.Thing.Id, Gas.CarbonDioxide)
                {
                    Cycles = r.Whole(2, 8),
                    Pressure = Pressure.FromKilopascals(r.Between(10, 100)),
                }
                : null,
        ["parts-off"] = (r, floor) =>
            r.Tank(floor, (_, state) => state.PartsOff is null) is { } tank
                ? new PartsTakenOff(tank.Thing.Id, "Racking arm")
                : null,
        ["refitted"] = (r, floor) =>
            r.Tank(floor, (_, state) => state.PartsOff is not null) is { } tank
                ? new Refitted(tank.Thing.Id, "Racking arm")
                : null,
        ["parts-seen"] = (r, floor) => new PartsSeen(r.TankId(floor), []),
        ["leak-tested"] = (r, floor) => new LeakTested(r.TankId(floor), r.Chance(0.9)),
        ["gasket-changed"] = (r, floor) => new GasketChanged(r.TankId(floor), "Manway seal"),
        ["relief-valve-tested"] = (r, floor) =>
            r.Tank(floor, (tank, _) => tank.Relief is not null) is { } tank
                ? new ReliefValveTested(tank.Thing.Id, r.Chance(0.9)) { OpenedAt = Pressure.FromKilopascals(178) }
                : null,
        ["pressure-tested"] = (r, floor) =>
            r.Tank(floor, (tank, _) => tank.Rating is not null) is { } tank
                ? new PressureTested(tank.Thing.Id, r.Chance(0.95)) { Pressure = Pressure.FromKilopascals(260) }
                : null,
        ["probe-calibrated"] = (r, floor) =>
            new ProbeCalibrated(r.TankId(floor), "Thermometer", Passed: true) { OffBy = r.Between(-1, 1) },
    };
}
