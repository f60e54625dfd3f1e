using BrewFloor.Brewing.Heat;
using UnitsNet;

namespace BrewFloor.Brewing.Calculators;

internal static class TanksOnOneChiller
{
    public static Calculator Question { get; } =
        new("chiller", Subject.Heat)
        {
            Cautions = ["freezing"],
            Inputs =
            [
                Asks.Measured("chiller", Measure.Power, 0, 10_000, 1.5),
                Asks.Measured("fermenting", Measure.Power, 0, 10_000, 0.3),
                Asks.Usual("gains", Measure.Power, 0, 9_900, 0.1),
                Asks.Measured("crash-heat", Measure.Heat, 0, 100_000, 13),
                Asks.Usual("bath-heat", Measure.Heat, 0, 100_000, 0),
            ],
            Formula =
            [
                "left over = chiller - fermenting - gains, of all tanks together",
                "time = (to be cooled - bath) / left over",
            ],
            Sources = ["Energy balance; what each tank asks for comes from the questions on heat and crashing"],
            Checks = ["HE-11", "HE-23"],
            Plot = new Plot("crash-heat", "time-in-all", 0, 100),
            Compute = given =>
                from plan in CoolingPlan.Of(
                    given.Power("chiller"),
                    [new TankLoad(given.Power("fermenting"), given.Power("gains"), Heat(given, "crash-heat"))]
                )
                select plan.Holds
                    ? Holding(plan, Heat(given, "bath-heat"))
                    : Overloaded(plan, Heat(given, "bath-heat")),
        };

    private static Answer Holding(CoolingPlan plan, Energy bath) =>
        plan.TimeToCrash(bath).Gives(out var time)
            ? Answered(plan, new Result("time-in-all", Figure.Of(time))).Finding("chiller-holds", Weight.Plain)
            : Answered(plan).Finding("chiller-just-holds", Weight.Caution);

    private static Answer Overloaded(CoolingPlan plan, Energy bath) =>
        (
            plan.BathLasts(bath).Gives(out var lasts)
                ? Answered(plan, new Result("bath-lasts", Figure.Of(lasts)))
                : Answered(plan)
        ).Finding("chiller-too-weak", Weight.Danger);

    // Never has no number: what isn't reached is left out.
    private static Answer Answered(CoolingPlan plan, params Result[] times) =>
        new([new Result("spare", Figure.Of(plan.Spare)), .. times, new Result("steady", Figure.Of(plan.Steady))]);

    private static Energy Heat(Given given, string name) => Energy.FromMegajoules(given.Number(name));
}
