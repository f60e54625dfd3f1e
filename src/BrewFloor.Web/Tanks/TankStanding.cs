using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Tanks;
using BrewFloor.Web.Shell;

namespace BrewFloor.Web.Tanks;

/// <summary>How the tank stands: what a person must know before a hand is on it.</summary>
public static class TankStanding
{
    /// <summary>How it is shut, under what and since when that pressure is known, then what is wrong with it.</summary>
    public static IEnumerable<(string Key, string Value)> Of(Bay bay, Wording words)
    {
        var (state, figures) = (bay.State, words.Figures);
        yield return ("closure", words.Entry("choice.Closure." + state.Closure));
        yield return ("gas", words.Entry("choice.Gas." + state.Gas));
        if (state.IsShut || state.Pressure is { Value.Kilopascals: not 0 })
        {
            yield return ("pressure", Pressure(state, words));
        }

        if (bay.Tank.HasVacuumRelief)
        {
            yield return ("vacuum-relief", words["fact-has"]);
        }

        if (state.Planned is { } planned)
        {
            yield return ("planned", $"{figures.Moment(planned.At)}, {figures.Of(planned.Volume)}");
        }

        foreach (var wrong in Wrong(bay, words))
        {
            yield return wrong;
        }
    }

    private static IEnumerable<(string Key, string Value)> Wrong(Bay bay, Wording words)
    {
        var (state, figures) = (bay.State, words.Figures);
        foreach (var hurt in state.FilmHurt)
        {
            yield return ("film-hurt", $"{words.Entry("choice.Trigger." + hurt.By)}, {figures.Moment(hurt.Moment.At)}");
        }

        foreach (var exposure in state.ExposedTo.Where(exposure => !bay.Tank.IsClearOf(exposure)))
        {
            yield return (
                "exposed",
                exposure.What.Length > 0 ? exposure.What : words.Entry("choice.ExposureKind." + exposure.Kind)
            );
        }

        if (state.PartsOff is { } off)
        {
            yield return ("parts-off", figures.Moment(off.At));
        }

        if (state.Leaks)
        {
            yield return ("leaks", state.LeakTested is { } test ? figures.Moment(test.At) : words["bay-unknown"]);
        }

        if (state is { PressureTestFailed: true, PressureTested: { } tested })
        {
            yield return ("pressure-test-failed", figures.Moment(tested.At));
        }

        if (PressureGuards.HasReliefFailed(bay.Tank, state, bay.Rules))
        {
            yield return (
                "relief-failed",
                state.ReliefTested is { } test ? figures.Moment(test.At) : words["bay-unknown"]
            );
        }
    }

    private static string Pressure(TankState state, Wording words) =>
        state is { IsPressureInDoubt: false, Pressure: { } read }
            ? words["fact-pressure-at", new("pressure", read.Value), new("at", read.Moment.At)]
            : words["fact-pressure-doubt"];
}
